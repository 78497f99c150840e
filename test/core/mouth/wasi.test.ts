import { describe, expect, it } from 'vitest';
import { createWasi, ProcessExit, type Wasi } from '../../../kiosk/mouth/wasi.ts';

/** The calls as a program makes them: with places in its memory. */
function program(words: readonly string[], files: Readonly<Record<string, string>> = {}) {
  const memory = new WebAssembly.Memory({ initial: 1 });
  const wasi: Wasi = createWasi(new Map(Object.entries(files).map(([name, text]) => [name, new TextEncoder().encode(text)])));
  wasi.attach(memory, words);
  const calls = wasi.imports['wasi_snapshot_preview1'] as Record<string, (...values: unknown[]) => number>;
  const view = new DataView(memory.buffer);
  const call = (name: string, ...values: unknown[]): number => {
    const found = calls[name];
    if (found === undefined) throw new Error(`no call ${name}`);
    return found(...values);
  };
  const put = (at: number, text: string) => new Uint8Array(memory.buffer).set(new TextEncoder().encode(text), at);
  const text = (at: number, length: number) => new TextDecoder().decode(new Uint8Array(memory.buffer, at, length));
  const number = (at: number) => view.getUint32(at, true);
  /** One buffer, described at 1000. */
  const buffer = (at: number, length: number) => {
    view.setUint32(1_000, at, true);
    view.setUint32(1_004, length, true);
    return 1_000;
  };
  const open = (name: string, how: number): { error: number; descriptor: number } => {
    put(2_000, name);
    const error = call('path_open', 3, 1, 2_000, name.length, how, 0n, 0n, 0, 2_100);
    return { error, descriptor: number(2_100) };
  };
  const write = (descriptor: number, words: string) => {
    put(4_000, words);
    return call('fd_write', descriptor, buffer(4_000, words.length), 1, 2_200);
  };
  return { wasi, call, text, number, buffer, open, write };
}

const CREATE = 1;
const TRUNCATE = 8;

describe('the little system under the voice', () => {
  it('hands over the command line', () => {
    const { call, text, number } = program(['flite', '-t', 'five eighths']);
    call('args_sizes_get', 0, 4);
    expect([number(0), number(4)]).toEqual([3, 6 + 3 + 13]);
    call('args_get', 100, 200);
    expect(text(number(108), 13)).toBe('five eighths\0');
  });

  it('reads a file it was given, in pieces, to its end', () => {
    const { call, open, buffer, text, number } = program([], { 'words.lex': 'mortise' });
    const { error, descriptor } = open('words.lex', 0);
    expect(error).toBe(0);
    const read = (length: number) => {
      call('fd_read', descriptor, buffer(4_000, length), 1, 2_200);
      return text(4_000, number(2_200));
    };
    expect([read(4), read(4), read(4)]).toEqual(['mort', 'ise', '']);
  });

  it('says that a file is not there, and makes one when it may', () => {
    const { wasi, open, write } = program([]);
    expect(open('out.wav', 0).error).toBe(44);
    const { descriptor } = open('out.wav', CREATE | TRUNCATE);
    write(descriptor, 'RIFF');
    expect(new TextDecoder().decode(wasi.file('out.wav'))).toBe('RIFF');
  });

  it('writes over an earlier place, as the voice does to put the length into the header', () => {
    const { wasi, call, open, write } = program([]);
    const { descriptor } = open('out.wav', CREATE);
    write(descriptor, '????sound');
    call('fd_seek', descriptor, 0n, 0, 2_300);
    write(descriptor, '1234');
    call('fd_seek', descriptor, 0n, 2, 2_300);
    write(descriptor, '!');
    expect(new TextDecoder().decode(wasi.file('out.wav'))).toBe('1234sound!');
  });

  it('begins a file anew when asked to cut it', () => {
    const { wasi, open, write } = program([], { 'out.wav': 'older and longer' });
    write(open('out.wav', TRUNCATE).descriptor, 'new');
    expect(new TextDecoder().decode(wasi.file('out.wav'))).toBe('new');
  });

  it('keeps what was printed', () => {
    const { wasi, write } = program([]);
    write(1, 'pau ');
    write(2, 'a warning');
    expect(wasi.said()).toBe('pau a warning');
  });

  it('refuses a descriptor that is not open', () => {
    const { call, buffer, write, open } = program([]);
    const { descriptor } = open('out.wav', CREATE);
    expect(call('fd_close', descriptor)).toBe(0);
    expect(call('fd_close', descriptor)).toBe(8);
    expect(write(descriptor, 'x')).toBe(8);
    expect(call('fd_read', 77, buffer(0, 4), 1, 2_200)).toBe(8);
    expect(call('fd_prestat_get', 4, 0)).toBe(8);
  });

  it('ends by an exit that carries its code', () => {
    const { call } = program([]);
    expect(() => call('proc_exit', 3)).toThrow(ProcessExit);
    expect(() => call('proc_exit', 3)).toThrow('code 3');
  });
});
