const SHIPPED_MODEL = '/models/model.tar.gz';
const ANSWER_WITHIN_MS = 5_000;

/**
 * The address of the model to hear with: one that the maker installed (the newest, if there are several), else the one that ships.
 * It never fails: without an answer from the server the shipped model is tried, and its own failure says more.
 */
export async function currentModel(): Promise<string> {
  try {
    const response = await fetch('/api/models', { signal: AbortSignal.timeout(ANSWER_WITHIN_MS) });
    return newestOwn(await response.json()) ?? SHIPPED_MODEL;
  } catch {
    return SHIPPED_MODEL;
  }
}

/** Reads the server's list of models without believing its shape. */
function newestOwn(answer: unknown): string | undefined {
  const files: unknown = typeof answer === 'object' && answer !== null && 'files' in answer ? answer.files : undefined;
  if (!Array.isArray(files)) return undefined;
  const own = files.filter((file: unknown) => isModel(file)).filter(({ shipped }) => !shipped);
  return own.sort((one, other) => other.changedMs - one.changedMs)[0]?.url;
}

interface Model { readonly url: string; readonly shipped: boolean; readonly changedMs: number }

function isModel(file: unknown): file is Model {
  const model = file as Partial<Model> | null;
  return typeof model?.url === 'string' && model.url.startsWith('/') && typeof model.shipped === 'boolean' && typeof model.changedMs === 'number';
}
