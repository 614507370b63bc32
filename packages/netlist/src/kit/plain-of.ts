import { stepNumberKey } from './choose-variant.ts';
import type { Located } from './located.ts';

/** Stands for a key that JavaScript objects cannot hold as an ordinary one; control characters never reach here. */
export const protoStandIn = '\u0001proto';

/** A plain copy for the schema alone; nothing else ever reads it. */
export function plainOf(node: Located): unknown {
  if (node.kind === 'text') return node.text;
  if (node.kind === 'list') return node.items.map(plainOf);
  const plain = Object.create(null) as Record<string, unknown>;
  for (const { key, value } of node.entries.values()) {
    if (key !== stepNumberKey) plain[key === '__proto__' ? protoStandIn : key] = plainOf(value);
  }
  return plain;
}
