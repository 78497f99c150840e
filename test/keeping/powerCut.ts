import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';

/** One thing that a traced program did to a file, in the order in which the system saw it. */
type Event =
  | { readonly kind: 'grew'; readonly file: string; readonly bytes: number }
  | { readonly kind: 'cut'; readonly file: string; readonly length: number }
  | { readonly kind: 'synced'; readonly file: string }
  | { readonly kind: 'renamed'; readonly from: string; readonly to: string }
  | { readonly kind: 'said'; readonly text: string };

export interface Trace {
  readonly events: readonly { readonly seconds: number; readonly event: Event }[];
}

/** What strace is to be started with; the program and its words come after. */
export function tracing(output: string): readonly string[] {
  return ['strace', '-f', '-ttt', '-y', '--seccomp-bpf', '-s', '400', '-e', 'trace=write,pwrite64,pwritev,writev,fdatasync,fsync,ftruncate,truncate,rename,renameat,renameat2', '-o', output];
}

/** Why nothing can be traced here; undefined when it can. Installs the distribution's strace when it may. */
export function whyNoTracing(): string | undefined {
  if (process.platform !== 'linux') return 'strace is for Linux only';
  const works = () => spawnSync('strace', ['-f', '--seccomp-bpf', '-e', 'trace=fdatasync', 'true'], { stdio: 'ignore' }).status === 0;
  if (works()) return undefined;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    spawnSync('apt-get', ['install', '-y', '--no-install-recommends', 'strace'], { stdio: 'ignore', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } });
  }
  return works() ? undefined : 'strace is not there, or may not trace here: install your distribution\'s package "strace"';
}

const CALL = /^\d+\s+(\d+\.\d+) (?:<\.\.\. )?(\w+)(?: resumed>|\()(.*)$/;

/** Reads what strace wrote. A call that was broken off and resumed counts when it ended. */
export function readTrace(file: string): Trace {
  const begun = new Map<string, string>();
  const events: { seconds: number; event: Event }[] = [];
  for (const line of readFileSync(file, 'utf8').split('\n')) {
    const match = CALL.exec(line);
    if (!match) continue;
    const [, seconds = '', name = '', rest = ''] = match;
    const thread = `${line.slice(0, line.indexOf(' '))} ${name}`;
    if (rest.endsWith('<unfinished ...>')) {
      begun.set(thread, rest.slice(0, -'<unfinished ...>'.length));
      continue;
    }
    const whole = line.includes(' resumed>') ? (begun.get(thread) ?? '') + rest : rest;
    const event = eventOf(name, whole);
    if (event) events.push({ seconds: Number(seconds), event });
  }
  return { events };
}

function eventOf(name: string, words: string): Event | undefined {
  const result = Number(/= (-?\d+)(?:<.*>)?(?: \S+ \(.*\))?$/.exec(words)?.[1] ?? -1);
  if (result < 0) return undefined;
  const file = /^\d+<([^>]*)>/.exec(words)?.[1] ?? '';
  if (name.startsWith('rename')) {
    const [from = '', to = ''] = [...words.matchAll(/"((?:[^"\\]|\\.)*)"/g)].map((match) => match[1] ?? '');
    return { kind: 'renamed', from, to };
  }
  if (name === 'fdatasync' || name === 'fsync') return { kind: 'synced', file };
  if (name === 'ftruncate') return { kind: 'cut', file, length: Number(/, (\d+)\)/.exec(words)?.[1] ?? 0) };
  if (name.includes('write')) return words.includes('KEEPING kept') ? { kind: 'said', text: words.replaceAll('\\"', '"') } : { kind: 'grew', file, bytes: result };
  return undefined;
}

/** For each file that was written: how many of its bytes were sure to be on the disk at a time. Files appear by the name they had last. */
export function syncedAt({ events }: Trace, untilSeconds: number): ReadonlyMap<string, number> {
  const written = new Map<string, number>();
  const synced = new Map<string, number>();
  for (const { seconds, event } of events) {
    if (seconds > untilSeconds) break;
    if (event.kind === 'grew') written.set(event.file, (written.get(event.file) ?? 0) + event.bytes);
    else if (event.kind === 'cut') written.set(event.file, event.length);
    else if (event.kind === 'synced') synced.set(event.file, written.get(event.file) ?? 0);
    else if (event.kind === 'renamed') {
      for (const sizes of [written, synced]) {
        const size = sizes.get(event.from);
        sizes.delete(event.from);
        if (size !== undefined) sizes.set(event.to, size);
      }
    }
    if (event.kind !== 'said' && event.kind !== 'renamed' && !synced.has(event.file)) synced.set(event.file, 0);
  }
  return synced;
}

/** The entries that the page answered for, with the time at which it had said so. */
export function saidIn({ events }: Trace): readonly { readonly seconds: number; readonly number: number; readonly checksum: string }[] {
  return events.flatMap(({ seconds, event }) => {
    if (event.kind !== 'said') return [];
    return [...event.text.matchAll(/KEEPING kept \{"number":(\d+),"checksum":"(\w+)"\} END/g)].map(([, number, checksum = '']) => ({ seconds, number: Number(number), checksum }));
  });
}
