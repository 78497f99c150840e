import { svg } from 'lit';
import type { SVGTemplateResult } from 'lit';

/**
 * The trade's marks, drawn by us in a box of 24 × 24: the face mark is a loop with a tail that runs off to the edge the next
 * mark stands on; the edge mark is a vee whose point touches the reference face. Common practice, no source.
 */
export const FACE_MARK = 'M3 21 C 9 17 13 11 13 7 C 13 3.5 11.4 2.5 10 2.5 C 7.8 2.5 6.6 5 6.6 8 C 6.6 13 11 18 20 21';
export const EDGE_MARK = 'M4 20 L12 4 L20 20';
/** A caution: a triangle with an upright stroke and a point. */
export const CAUTION_MARK = 'M12 2.5 L22.5 21 L1.5 21 Z M12 9 L12 15 M12 17.6 L12 18.6';
/** A marking gauge: the stem through the stock, and the pin. */
export const GAUGE_MARK = 'M2 12 L22 12 M8 5 L14 5 L14 19 L8 19 Z M20 12 L20 16';
export const CHECK_MARK = 'M3 13 L9 20 L21 4';

/** A mark as a drawing of its own, `1em` high. */
export const markIcon = (path: string): SVGTemplateResult => svg`<path d=${path} fill="none" stroke="currentColor" stroke-width="2.4" stroke-linecap="round" stroke-linejoin="round"></path>`;
