/** A JSON text as a tree that knows the place of everything in it. */
export type JsonNode = JsonObject | JsonArray | JsonScalar;

interface Placed {
  /** Offset of its first character in the text. */
  readonly start: number;
  /** JSONPath (RFC 9535): `$.parts[0].sizes.length`. */
  readonly path: string;
}
export interface JsonMember {
  readonly key: string;
  readonly keyStart: number;
  readonly value: JsonNode;
}
export interface JsonObject extends Placed {
  readonly kind: 'object';
  readonly members: readonly JsonMember[];
  /** The text ended, or could not be followed, before this was closed: what is missing may only be lost. */
  readonly cut: boolean;
}
export interface JsonArray extends Placed {
  readonly kind: 'list';
  readonly items: readonly JsonNode[];
  readonly cut: boolean;
}
type JsonScalar = Placed & (
  | { readonly kind: 'text'; readonly value: string }
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'true or false'; readonly value: boolean }
  | { readonly kind: 'null' }
  /** Something stood here that could not be read; it was reported. */
  | { readonly kind: 'unreadable' });

/** The plain value of a node; keys become own properties whatever they are called, `__proto__` too. */
export function plainValue(node: JsonNode): unknown {
  switch (node.kind) {
    case 'object': return Object.fromEntries(node.members.map(({ key, value }) => [key, plainValue(value)]));
    case 'list': return node.items.map(plainValue);
    case 'text':
    case 'number':
    case 'true or false': return node.value;
    case 'null':
    case 'unreadable': return null;
  }
}

export function memberOf(node: JsonNode | undefined, key: string): JsonNode | undefined {
  return node?.kind === 'object' ? node.members.find((member) => member.key === key)?.value : undefined;
}

export function childPath(path: string, key: string): string {
  const short = key.length > 60 ? `${key.slice(0, 60)}…` : key;
  return /^[A-Za-z_$][A-Za-z0-9_$]*$/u.test(short) ? `${path}.${short}` : `${path}[${JSON.stringify(short)}]`;
}
