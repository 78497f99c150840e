/** What can be had on paper. */
export type SheetChoice =
  | { readonly what: 'layout'; readonly part: string; readonly copy?: number }
  | { readonly what: 'rod' }
  | { readonly what: 'labels' }
  | { readonly what: 'cut list' }
  | { readonly what: 'gauge card' }
  /** A sheet a board, not at full size. */
  | { readonly what: 'cutting plan' };
