import { writeFault } from './fault.ts';
import type { ModelShelf, ShelvedModel } from './shelf.ts';

/** A speech model as the kiosk is told of it. */
export interface ListedModel {
  readonly name: string;
  /** Where its packed form is to be had; absent for one that cannot be used. */
  readonly url?: string;
  readonly shipped: boolean;
  readonly chosen: boolean;
  readonly state: 'good' | 'refused' | 'not checked yet';
  /** Why it was refused, or what to know of it. */
  readonly sentences: readonly string[];
}

/** What the built-in model is called. */
export const BUILT_IN = 'built-in';

/** All models that there are: the built-in one first. */
export async function listModels(shelf: ModelShelf): Promise<readonly ListedModel[]> {
  const shelved = await shelf.list();
  const builtIn: ListedModel = { name: BUILT_IN, url: '/models/model.tar.gz', shipped: true, chosen: !shelved.some(({ chosen }) => chosen), state: 'good', sentences: [] };
  return [builtIn, ...shelved.map(listed)];
}

function listed({ name, chosen, verdict, packed }: ShelvedModel): ListedModel {
  const state = verdict === undefined ? 'not checked yet' : packed === undefined ? 'refused' : 'good';
  return {
    name, shipped: false, chosen, state,
    ...(packed === undefined ? {} : { url: `/api/models/${encodeURIComponent(name)}` }),
    sentences: verdict === undefined ? [] : [...verdict.faults.map(writeFault), ...verdict.remarks],
  };
}
