/** A place in a text, both from 1; columns count as editors do. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

/** Finds the line and column of offsets in one text, quickly for many. */
export function placeFinder(text: string): (offset: number) => Place {
  const starts = [0];
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return (offset) => {
    let [low, high] = [0, starts.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((starts[middle] ?? 0) <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: offset - (starts[low] ?? 0) + 1 };
  };
}

export function placeAt(text: string, offset: number): Place {
  return placeFinder(text)(offset);
}

/**
 * Where the character at `inside` of a JSON string's value stands in the text, when the string's opening quote is at `start`:
 * the same but for escapes, which take several characters in the text.
 */
export function offsetInString(text: string, start: number, inside: number): number {
  let at = start + 1;
  for (let passed = 0; passed < inside && at < text.length; passed++) {
    if (text[at] !== '\\') at += 1;
    else at += text[at + 1] === 'u' ? 6 : 2;
  }
  return at;
}
