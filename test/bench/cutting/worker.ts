/** Solves published instances beside a page, for the cutting benchmark's `--browser`. */
import type { Instance } from '../../../core/stock/instances.ts';
import { solveInstance } from './instance.ts';

self.onmessage = ({ data }: MessageEvent<{ instance: Instance; seconds: number }>) => { self.postMessage(solveInstance(data.instance, data.seconds)); };
