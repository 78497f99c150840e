/** Dry to within two points of what it comes to in use (a meter maker's advice); furniture lumber is dried to 6 to 8 percent (Wood Handbook, chapter 13). */
export const CLOSE_POINTS = 2;
/** What furniture lumber is dried to, in percent, while nothing is known of the house (Wood Handbook, chapter 13). */
export const FURNITURE_PERCENT = { from: 6, to: 8 } as const;

export interface Ready {
  readonly verdict: 'ready' | 'too wet' | 'too dry';
  /** Points of moisture over what it comes to in the house; under it when negative. */
  readonly overHouse: number;
  /** The same of the shop: what it still does while it is worked. */
  readonly overShop: number;
  /** It changes while it is worked on: more than two points off the shop. */
  readonly movesInShop: boolean;
}

/** Whether stock is dry enough to work: its own moisture against what wood comes to in the house it is for, and in the shop. All in percent. */
export function readiness(stock: number, house: number, shop: number): Ready {
  const overHouse = stock - house;
  const overShop = stock - shop;
  return {
    verdict: overHouse > CLOSE_POINTS ? 'too wet' : overHouse < -CLOSE_POINTS ? 'too dry' : 'ready',
    overHouse, overShop, movesInShop: Math.abs(overShop) > CLOSE_POINTS,
  };
}
