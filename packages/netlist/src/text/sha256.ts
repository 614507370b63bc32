/** The first 32 bits of the fractional parts of the roots of the first primes, as FIPS 180-4 makes its constants. */
function fractions(count: number, root: (prime: number) => number): Uint32Array {
  const found = new Uint32Array(count);
  for (let candidate = 2, at = 0; at < count; candidate += 1) {
    let isPrime = true;
    for (let by = 2; by * by <= candidate; by += 1) isPrime &&= candidate % by !== 0;
    if (!isPrime) continue;
    const value = root(candidate);
    found[at] = (value - Math.floor(value)) * 2 ** 32;
    at += 1;
  }
  return found;
}

const start = fractions(8, Math.sqrt);
const constants = fractions(64, Math.cbrt);
const blockBytes = 64;

// The turns of words are written out: a small kit is read by code that nothing has made fast yet, where each call costs.
function mix(state: Uint32Array, schedule: Uint32Array): void {
  for (let at = 16; at < 64; at += 1) {
    const early = schedule[at - 15] as number;
    const late = schedule[at - 2] as number;
    const small = ((early >>> 7) | (early << 25)) ^ ((early >>> 18) | (early << 14)) ^ (early >>> 3);
    const large = ((late >>> 17) | (late << 15)) ^ ((late >>> 19) | (late << 13)) ^ (late >>> 10);
    schedule[at] = (schedule[at - 16] as number) + small + (schedule[at - 7] as number) + large;
  }
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = state;
  for (let at = 0; at < 64; at += 1) {
    const turnedE = ((e >>> 6) | (e << 26)) ^ ((e >>> 11) | (e << 21)) ^ ((e >>> 25) | (e << 7));
    const turnedA = ((a >>> 2) | (a << 30)) ^ ((a >>> 13) | (a << 19)) ^ ((a >>> 22) | (a << 10));
    const choice = (e & f) ^ (~e & g);
    const majority = (a & b) ^ (a & c) ^ (b & c);
    const first = (h + turnedE + choice + (constants[at] as number) + (schedule[at] as number)) | 0;
    h = g;
    g = f;
    f = e;
    e = (d + first) | 0;
    d = c;
    c = b;
    b = a;
    a = (first + turnedA + majority) | 0;
  }
  for (const [at, word] of [a, b, c, d, e, f, g, h].entries()) state[at] = (state[at] as number) + word;
}

/**
 * SHA-256 as FIPS 180-4 defines it. It is here because a kit names another one by its digest wherever kits are read, and
 * browsers have no digest that answers at once.
 *
 * @param content - bytes, or text that is taken in UTF-8
 * @returns 64 hexadecimal digits; linear in the content
 */
export function sha256(content: Uint8Array | string): string {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  const state = start.slice();
  const schedule = new Uint32Array(64);
  const whole = bytes.length - (bytes.length % blockBytes);
  const rest = new Uint8Array(bytes.length - whole < 56 ? blockBytes : blockBytes * 2);
  rest.set(bytes.subarray(whole));
  rest[bytes.length - whole] = 0x80;
  new DataView(rest.buffer).setBigUint64(rest.length - 8, BigInt(bytes.length) * 8n);
  for (const [part, length] of [
    [bytes, whole],
    [rest, rest.length],
  ] as const) {
    const view = new DataView(part.buffer, part.byteOffset, part.byteLength);
    for (let block = 0; block < length; block += blockBytes) {
      for (let at = 0; at < 16; at += 1) schedule[at] = view.getUint32(block + at * 4);
      mix(state, schedule);
    }
  }
  return [...state].map((word) => word.toString(16).padStart(8, '0')).join('');
}
