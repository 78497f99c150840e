/** A speech model that there is, as the server tells of it. */
export interface SpeechModel {
  readonly name: string;
  /** Where it is to be had; absent for one that was refused or is not checked yet. */
  readonly url?: string;
  readonly shipped: boolean;
  readonly chosen: boolean;
  /** Why it was refused, or what to know of it. */
  readonly sentences: readonly string[];
}

const SHIPPED_URL = '/models/model.tar.gz';
const SHIPPED_MODEL: SpeechModel = { name: 'built-in', url: SHIPPED_URL, shipped: true, chosen: true, sentences: [] };
const ANSWER_WITHIN_MS = 5_000;

/** All models, and whether some are still being checked. Without an answer from the server there is the one that ships. */
export async function listModels(): Promise<{ readonly models: readonly SpeechModel[]; readonly checking: boolean }> {
  try {
    const response = await fetch('/api/models', { signal: AbortSignal.timeout(ANSWER_WITHIN_MS) });
    const answer = await response.json() as { files?: unknown; checking?: unknown } | null;
    const models = Array.isArray(answer?.files) ? answer.files.filter((file: unknown) => isModel(file)) : [];
    return { models: models.some(({ shipped }) => shipped) ? models : [SHIPPED_MODEL], checking: answer?.checking === true };
  } catch {
    return { models: [SHIPPED_MODEL], checking: false };
  }
}

/**
 * The address of the model to hear with: the chosen one, else the one that ships. It never fails: without an answer from the server the shipped model is tried, and its
 * own failure says more.
 * @param refused addresses of models that could not be used here
 */
export async function currentModel(refused: ReadonlySet<string> = new Set()): Promise<string> {
  const chosen = (await listModels()).models.find((model) => model.chosen)?.url;
  return chosen === undefined || refused.has(chosen) ? SHIPPED_URL : chosen;
}

/** @throws {Error} with a sentence for the maker when it cannot be chosen */
export async function chooseModel(name: string): Promise<void> {
  const response = await fetch('/api/models/chosen', {
    method: 'POST', headers: { 'content-type': 'application/json', 'x-benchcall': '1' }, body: JSON.stringify({ name }), signal: AbortSignal.timeout(ANSWER_WITHIN_MS),
  });
  if (!response.ok) throw new Error((await response.json() as { error?: string }).error ?? `the kiosk's server answered ${response.status}`);
}

/** The server's list is read without believing its shape. */
function isModel(file: unknown): file is SpeechModel {
  const model = file as Partial<SpeechModel> | null;
  return typeof model?.name === 'string' && typeof model.shipped === 'boolean' && typeof model.chosen === 'boolean'
    && (model.url === undefined || (typeof model.url === 'string' && model.url.startsWith('/')))
    && Array.isArray(model.sentences) && model.sentences.every((sentence) => typeof sentence === 'string');
}
