import { element } from './element.ts';

/** Gives a file to the person at the browser. */
export function saveFile(name: string, type: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  element('a', {
    attributes: [
      ['href', address],
      ['download', name],
    ],
  }).click();
  setTimeout(() => URL.revokeObjectURL(address), 1000);
}
