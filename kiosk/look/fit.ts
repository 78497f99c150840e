import type { LitElement, ReactiveController } from 'lit';

type Host = LitElement;

/**
 * Keeps text as large as its box allows: after every draw, tries font sizes from the largest down and keeps the first that
 * fits. For text whose length is not known beforehand; the box must have a size of its own.
 */
export class FitText implements ReactiveController {
  readonly #host: Host;
  readonly #selector: string;
  readonly #sizes: readonly number[];
  readonly #resized = new ResizeObserver(() => this.#fitAll());

  /** `sizes` in rem, largest first; multiplied by the maker's text size, though never below the smallest when that is what fits. */
  constructor(host: Host, selector: string, sizes: readonly number[]) {
    this.#host = host;
    this.#selector = selector;
    this.#sizes = sizes;
    host.addController(this);
  }

  hostConnected(): void {
    this.#resized.observe(this.#host);
    void document.fonts.ready.then(() => this.#fitAll());
  }

  hostDisconnected(): void {
    this.#resized.disconnect();
  }

  hostUpdated(): void {
    this.#fitAll();
    // Sizes inside are elements of their own and draw themselves a moment later.
    queueMicrotask(() => requestAnimationFrame(() => this.#fitAll()));
  }

  #fitAll(): void {
    if (!this.#host.hasUpdated) return;
    for (const box of this.#host.renderRoot.querySelectorAll<HTMLElement>(this.#selector)) {
      // Its room may change without its host being drawn anew: a neighbour grew, or the maker chose larger text.
      this.#resized.observe(box);
      fit(box, this.#sizes);
    }
  }
}

/** What a box came to when it was last fitted; as long as it measures the same, it is left alone. */
const fitted = new WeakMap<HTMLElement, string>();

function measure(box: HTMLElement): string {
  return [box.clientWidth, box.clientHeight, box.scrollWidth, box.scrollHeight, getComputedStyle(box).getPropertyValue('--text'), box.textContent].join(' ');
}

/** Letters reach beyond their line where lines are set close: a tenth of their size is not too much, and a pixel is rounding. Beside large figures stand small captions, which may lose no more than their own. */
const MOST_SLACK = 5;
const fits = (box: HTMLElement): boolean => {
  const slack = 1 + Math.min(MOST_SLACK, Number.parseFloat(getComputedStyle(box).fontSize) * 0.1);
  return box.scrollHeight <= box.clientHeight + slack && box.scrollWidth <= box.clientWidth + 1;
};

function fit(box: HTMLElement, sizes: readonly number[]): void {
  if (fitted.get(box) === measure(box)) return;
  const larger = Number(getComputedStyle(box).getPropertyValue('--text')) || 1;
  const smallest = sizes.at(-1) ?? 1;
  const tried = [...sizes.map((size) => size * larger), ...(larger > 1 ? [smallest] : [])];
  for (const size of tried) {
    box.style.setProperty('font-size', `${size}rem`);
    if (fits(box)) break;
  }
  fitted.set(box, measure(box));
}
