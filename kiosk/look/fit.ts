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
    for (const box of this.#host.renderRoot.querySelectorAll<HTMLElement>(this.#selector)) fit(box, this.#sizes);
  }
}

function fit(box: HTMLElement, sizes: readonly number[]): void {
  const larger = Number(getComputedStyle(box).getPropertyValue('--text')) || 1;
  const smallest = sizes.at(-1) ?? 1;
  const tried = [...sizes.map((size) => size * larger), ...(larger > 1 ? [smallest] : [])];
  for (const size of tried) {
    box.style.setProperty('font-size', `${size}rem`);
    if (box.scrollHeight <= box.clientHeight + 1 && box.scrollWidth <= box.clientWidth + 1) return;
  }
}
