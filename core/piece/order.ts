/**
 * An order in which every node comes after those it needs (Kahn 1962). Nodes on a circle, and those that stand on one, are left out.
 */
export function dependencyOrder(needs: readonly (readonly number[])[]): readonly number[] {
  const waitingFor = needs.map((needed) => new Set(needed).size);
  const neededBy = needs.map((): number[] => []);
  needs.forEach((needed, node) => { for (const other of new Set(needed)) neededBy[other]?.push(node); });
  const order = waitingFor.flatMap((count, node) => (count === 0 ? [node] : []));
  for (let at = 0; at < order.length; at++) {
    for (const node of neededBy[order[at] ?? -1] ?? []) {
      const left = (waitingFor[node] ?? 0) - 1;
      waitingFor[node] = left;
      if (left === 0) order.push(node);
    }
  }
  return order;
}

/**
 * The circles among the nodes that have no place in the order: each as its nodes in turn, every one needing the next. From any
 * such node a walk along unordered needs must come back on itself.
 */
export function findCircles(needs: readonly (readonly number[])[], order: readonly number[]): readonly (readonly number[])[] {
  const settled = new Set(order);
  const circles: number[][] = [];
  for (let start = 0; start < needs.length; start++) {
    const walk = new Map<number, number>();
    let node: number | undefined = start;
    while (node !== undefined && !settled.has(node)) {
      if (walk.has(node)) { circles.push([...walk.keys()].slice(walk.get(node))); break; }
      walk.set(node, walk.size);
      node = needs[node]?.find((needed) => !settled.has(needed));
    }
    for (const walked of walk.keys()) settled.add(walked);
  }
  return circles;
}
