/** A stretch across a section, and what strips of each width are worth in it. Stretches may lie over each other: what may lie where differs by part. */
export interface Room<Strip> {
  readonly from: number;
  readonly to: number;
  readonly offers: readonly { readonly width: number; readonly value: number; readonly strip: Strip }[];
}

export interface PlacedStrip<Strip> {
  readonly across: number;
  readonly width: number;
  readonly strip: Strip;
}

/** The best strips across a section, a kerf apart, each within one of its rooms. Exact: every place is tried where a strip can begin when all lie close. */
export function bestAcross<Strip>(rooms: readonly Room<Strip>[], kerf: number): { readonly value: number; readonly strips: readonly PlacedStrip<Strip>[] } {
  const places = placesIn(rooms, kerf);
  const best = new Float64Array(places.length + 1);
  const chosen: (PlacedStrip<Strip> | undefined)[] = [];
  const after = (place: number): number => firstFrom(places, place);
  for (let at = places.length - 1; at >= 0; at--) {
    const across = places[at] ?? 0;
    best[at] = best[at + 1] ?? 0;
    for (const { from, to, offers } of rooms) {
      if (across < from) continue;
      for (const { width, value, strip } of offers) {
        if (value <= 0 || across + width > to) continue;
        const total = value + (best[after(across + width + kerf)] ?? 0);
        if (total > (best[at] ?? 0)) [best[at], chosen[at]] = [total, { across, width, strip }];
      }
    }
  }
  const strips: PlacedStrip<Strip>[] = [];
  for (let at = 0; at < places.length;) {
    const strip = chosen[at];
    if (strip !== undefined) strips.push(strip);
    at = strip === undefined ? at + 1 : after(strip.across + strip.width + kerf);
  }
  return { value: best[0] ?? 0, strips };
}

/** From the start of every room on, as far as strips one after the other reach. */
function placesIn(rooms: readonly Room<unknown>[], kerf: number): readonly number[] {
  const end = Math.max(0, ...rooms.map(({ to }) => to));
  const widths = new Set(rooms.flatMap(({ offers }) => offers.filter(({ value }) => value > 0).map(({ width }) => width)));
  const reached = new Set(rooms.map(({ from }) => from));
  for (const place of reached) for (const width of widths) if (place + width + kerf < end) reached.add(place + width + kerf);
  return [...reached].sort((a, b) => a - b);
}

/** Index of the first place no nearer than `from`; as many as there are places when none is. */
function firstFrom(places: readonly number[], from: number): number {
  let [low, high] = [0, places.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((places[middle] ?? 0) < from) low = middle + 1;
    else high = middle;
  }
  return low;
}
