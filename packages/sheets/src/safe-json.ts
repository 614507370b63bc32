/** Data as JSON that may stand in a script element: nothing in it can end the element or open a comment. */
export function safeJson(data: unknown): string {
  return JSON.stringify(data).replace(
    /[<>&\u2028\u2029]/g,
    (one) => `\\u${one.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}
