import type { DropAllowance } from '../harness/job.ts';
import { type WireMaterial, type WireStrands, wireMaterials, wireStrands } from '../harness/wire-data.ts';
import { type Located, textUnder } from '../kit/located.ts';
import { parseQuantity, type QuantityUnit } from '../value/index.ts';
import type { Complaints } from './complaints.ts';

/** A quantity with its unit under a key, or null when it is absent or cannot be read; then there is a complaint. */
export function quantityUnder(
  row: Located | null,
  key: string,
  unit: QuantityUnit,
  complaints: Complaints,
): number | null {
  const node = textUnder(row, key);
  if (node === null) return null;
  const parsed = parseQuantity(node.text, unit);
  if (parsed.ok) return parsed.value;
  complaints.error('quantity', parsed.problem, node.span, parsed.help);
  return null;
}

/** A loss written `5 %` or `0.5 V`. */
export function allowanceUnder(
  row: Located | null,
  key: string,
  complaints: Complaints,
): DropAllowance | null {
  const node = textUnder(row, key);
  if (node === null) return null;
  const percent = percentOf(node.text);
  if (percent !== null) return { unit: 'percent', value: percent };
  const volt = parseQuantity(node.text, 'V');
  if (volt.ok) return { unit: 'volt', value: volt.value };
  complaints.error('quantity', `\`${node.text}\` is no loss`, node.span, 'write it as `5 %` or `0.5 V`');
  return null;
}

/** A part of a whole written `80 %`. */
export function percentUnder(row: Located | null, key: string, complaints: Complaints): number | null {
  const node = textUnder(row, key);
  if (node === null) return null;
  const percent = percentOf(node.text);
  if (percent === null)
    complaints.error('quantity', `\`${node.text}\` is no percentage`, node.span, 'write it as `80 %`');
  return percent;
}

function percentOf(text: string): number | null {
  const match = /^(\d{1,3}(?:\.\d{1,6})?)\s*%$/.exec(text.trim());
  const value = Number(match?.[1]);
  return match !== null && value <= 100 ? value : null;
}

/** The material that a row says, or null. */
export function materialUnder(row: Located | null): WireMaterial | null {
  const text = textUnder(row, 'material')?.text;
  return wireMaterials.find((one) => one === text) ?? null;
}

/** The text that gives the resistance, as a row says it, or null. */
export function strandsUnder(row: Located | null): WireStrands | null {
  const text = textUnder(row, 'strands')?.text;
  return wireStrands.find((one) => one === text) ?? null;
}
