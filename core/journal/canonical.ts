/**
 * Plain data as one text that does not depend on the order in which its keys were set (the sorting of RFC 8785, which
 * also writes numbers and strings as JSON.stringify does). Absent and undefined are the same, as in JSON.
 */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map((item) => canonicalJson(item ?? null)).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const object = value as Readonly<Record<string, unknown>>;
  const fields: string[] = [];
  for (const key of Object.keys(object).sort()) {
    if (object[key] !== undefined) fields.push(`${JSON.stringify(key)}:${canonicalJson(object[key])}`);
  }
  return `{${fields.join(',')}}`;
}
