/**
 * The options of a Kaldi configuration file: lines of --name=value, '#' begins a remark.
 * @returns the options by name, or the first line that is none, counted from 1
 */
export function readConf(bytes: Uint8Array): ReadonlyMap<string, string> | { readonly line: number; readonly text: string } {
  const options = new Map<string, string>();
  for (const [index, line] of new TextDecoder().decode(bytes).split('\n').entries()) {
    const text = line.replace(/#.*$/, '').trim();
    if (text === '') continue;
    const option = /^--([A-Za-z][A-Za-z0-9_.-]*)(?:=(.*))?$/.exec(text);
    if (option === null) return { line: index + 1, text: text.slice(0, 60) };
    options.set((option[1] ?? '').toLowerCase().replaceAll('_', '-'), (option[2] ?? 'true').trim());
  }
  return options;
}

/** An option's number, or what stands when it is not given; NaN when it is no number. */
export function numberOf(options: ReadonlyMap<string, string>, name: string, otherwise: number): number {
  const text = options.get(name);
  return text === undefined ? otherwise : Number(text === '' ? NaN : text);
}
