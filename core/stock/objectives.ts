/** What the maker would rather have, ranked: the first decides, the next only between equals. */
export const OBJECTIVES = ['fewest boards', 'cheapest', 'least sawing', 'longest off-cuts', 'matched grain'] as const;
export type Objective = (typeof OBJECTIVES)[number];
