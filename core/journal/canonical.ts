/**
 * Plain data as one text that does not depend on the order in which its keys were set (the sorting of RFC 8785, which
 * also writes numbers and strings as JSON.stringify does). Absent and undefined are the same, as in JSON.
 */
export function canonicalJson(value: unknown): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map((item) => canonicalJson(item ?? null)).join(',')}]`;
  const object = value as Readonly<Record<string, unknown>>;
  let text = '{';
  for (const key of Object.keys(object).sort()) {
    const field = object[key];
    if (field !== undefined) text += `${text.length > 1 ? ',' : ''}${JSON.stringify(key)}:${canonicalJson(field)}`;
  }
  return `${text}}`;
}
