/** Gathers the microphone's samples into blocks and hands each over. Runs on the browser's audio thread, so it does nothing else. */
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
/** Seconds on the audio context's clock at the beginning of this call of `process`. */
declare const currentTime: number;
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

/** 100 ms at 16 kHz: short enough for early guesses, long enough to keep the post between threads quiet. */
const BLOCK_SAMPLES = 1_600;

class Capture extends AudioWorkletProcessor {
  #block = new Float32Array(BLOCK_SAMPLES);
  #filled = 0;

  process(inputs: readonly (readonly Float32Array[])[]): boolean {
    const samples = inputs[0]?.[0];
    if (samples === undefined) return true;
    for (let read = 0; read < samples.length;) {
      const part = samples.subarray(read, read + BLOCK_SAMPLES - this.#filled);
      this.#block.set(part, this.#filled);
      this.#filled += part.length;
      read += part.length;
      if (this.#filled === BLOCK_SAMPLES) this.#handOver();
    }
    return true;
  }

  #handOver(): void {
    this.port.postMessage({ samples: this.#block, at: currentTime }, [this.#block.buffer]);
    this.#block = new Float32Array(BLOCK_SAMPLES);
    this.#filled = 0;
  }
}

registerProcessor('capture', Capture);
