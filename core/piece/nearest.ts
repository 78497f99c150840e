/**
 * The known name nearest to a wrong one, when it is near enough to be a slip of the pen: at most a third of its letters changed
 * (Levenshtein distance, counting a swap of two neighbours as one). `undefined` when none is.
 */
export function nearestName(wrong: string, known: Iterable<string>): string | undefined {
  if (wrong.length > 80) return undefined;
  let best: string | undefined;
  let least = Math.max(1, Math.floor(wrong.length / 3)) + 1;
  for (const name of known) {
    if (Math.abs(name.length - wrong.length) >= least) continue;
    const distance = name.toLowerCase() === wrong.toLowerCase() ? 0 : editDistance(wrong, name);
    if (distance < least) [best, least] = [name, distance];
  }
  return best;
}

function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    for (let column = 1; column <= b.length; column++) {
      const changed = a[row - 1] === b[column - 1] ? 0 : 1;
      let least = Math.min((previous[column] ?? 0) + 1, (current[column - 1] ?? 0) + 1, (previous[column - 1] ?? 0) + changed);
      const swapped = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      if (swapped) least = Math.min(least, (before[column - 2] ?? 0) + 1);
      current.push(least);
    }
    [before, previous] = [previous, current];
  }
  return previous[b.length] ?? 0;
}
