/** What can be had on paper. */
export type SheetChoice =
  | { readonly what: 'layout'; readonly part: string; readonly copy?: number }
  | { readonly what: 'rod' }
  | { readonly what: 'labels' }
  | { readonly what: 'cut list' }
  | { readonly what: 'gauge card' };
