/*
 * What is asked of a page, as text: the tests themselves know no document.
 */

/** Elements that stick out of the page; what lies in a frame that pans does not, except on paper. */
export function overflowIn(print: boolean): string {
  return `(() => {
    const limit = document.documentElement.clientWidth + 0.5;
    return [...document.body.querySelectorAll('*')]
      .filter((one) => ${print} || one.closest('.pan') === null || one.classList.contains('pan'))
      .filter((one) => !(one instanceof SVGElement) || one instanceof SVGSVGElement)
      .filter((one) => one.getBoundingClientRect().right > limit && one.getBoundingClientRect().width > 0)
      .map((one) => one.tagName + ': ' + (one.textContent ?? '').slice(0, 40));
  })()`;
}

/** The height of the smallest letters of all drawings that are shown, in pixels; without end where none is. */
export const smallestLabel = `Math.min(...[...document.querySelectorAll('svg text')].filter((text) => text.closest('svg').getBoundingClientRect().width > 0).map((text) => {
  const svg = text.closest('svg');
  const { width, height } = svg.getBoundingClientRect();
  const scale = Math.min(width / svg.viewBox.baseVal.width, height / svg.viewBox.baseVal.height);
  return parseFloat(getComputedStyle(text).fontSize) * scale;
}))`;

/** Measures in cells of tables whose number stands in one line and whose unit in another. */
export const brokenMeasures = `[...document.querySelectorAll('td')].flatMap((cell) => {
  const found = [];
  const walker = document.createTreeWalker(cell, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode())
    for (const match of node.data.matchAll(/[0-9.]+ (mm2|mm)/g)) {
      const range = document.createRange();
      range.setStart(node, match.index);
      range.setEnd(node, match.index + match[0].length);
      if (new Set([...range.getClientRects()].map(({ top }) => top)).size > 1) found.push(cell.textContent);
    }
  return found;
})`;

/** Names of the faces in which a cavity lies over another one or outside the drawing. */
export const crowdedFaces = `[...document.querySelectorAll('svg.face')].flatMap((svg) => {
  const boxes = [...svg.querySelectorAll('.cavity, .blocked')].map((one) => one.getBoundingClientRect());
  const frame = svg.getBoundingClientRect();
  const apart = boxes.every((a, at) =>
    boxes.slice(at + 1).every((b) => a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top));
  const inside = boxes.every((one) =>
    one.left >= frame.left && one.right <= frame.right && one.top >= frame.top && one.bottom <= frame.bottom);
  return apart && inside ? [] : [svg.getAttribute('aria-label')];
})`;

/** Texts of strands that lie over one another or over a face in little, or stick out of their drawing. */
export const crowdedStrands = `[...document.querySelectorAll('svg.strand')].flatMap((svg) => {
  const frame = svg.getBoundingClientRect();
  const lines = [...svg.querySelectorAll('text tspan, .tiny')].map((one) => ({ told: one.textContent, box: one.getBoundingClientRect() }));
  const over = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 4;
  return lines.flatMap(({ told, box }, at) => [
    ...(box.right > frame.right + 1 || box.bottom > frame.bottom + 1 || box.top < frame.top - 1 ? ['outside: ' + told] : []),
    ...lines.slice(at + 1).filter((other) => over(box, other.box)).map((other) => told + ' over ' + other.told),
  ]);
})`;

/** Whether a marked cavity of a face that pans lies inside its frame. */
export function markedInView(pan: {
  readonly querySelectorAll: (selector: string) => Iterable<{ getBoundingClientRect: () => Side }>;
  readonly getBoundingClientRect: () => Side;
}): boolean {
  const frame = pan.getBoundingClientRect();
  return [...pan.querySelectorAll('.marked')].some((mark) => {
    const { left, right } = mark.getBoundingClientRect();
    return left >= frame.left - 1 && right <= frame.right + 1;
  });
}

interface Side {
  readonly left: number;
  readonly right: number;
}

/** What is meant for a finger and is smaller than one. */
export const smallTargets = `[...document.querySelectorAll('button, .answers label, textarea, summary')]
  .map((one) => one.getBoundingClientRect())
  .filter(({ width, height }) => width > 0 && (width < 44 || height < 44))`;

/** Run before a page: its storage refuses. */
export const noStorage = `Object.defineProperty(window, 'localStorage', {
  get() { throw new DOMException('denied', 'SecurityError'); },
});`;

/** The rows of the table of a page, head first, as a reader of the document tree sees them. */
export const tableInPage = `[...document.querySelectorAll('table tr')].map((row) => [...row.cells].map((cell) => cell.textContent))`;

/** Where an element begins and ends on the screen, in pixels from its top. */
export const heightsOf = (selector: string): string =>
  `(({ top, bottom }) => [top, bottom])(document.querySelector(${JSON.stringify(selector)}).getBoundingClientRect())`;

/** What stands over something else and must not be the last of a page. */
export const headsInPage = `[...document.querySelectorAll('h1, h2, h3, summary')].map((head) => head.textContent.replaceAll(/\\s+/g, ' ').trim())`;

/** A step as a reader of the document tree sees it. */
export interface StepInPage {
  readonly number: number;
  readonly order: string;
  readonly places: readonly {
    readonly address: string;
    /** What stands between the address and the words, such as `80 mm from it`. */
    readonly away: string;
    readonly words: string;
  }[];
  readonly drawings: readonly DrawnFace[];
}

/** A face as it is drawn, whatever its title says. */
export interface DrawnFace {
  readonly width: number;
  /** Every cavity with its label, its middle and what is drawn in it: `wire` with its paint, `plug`, `contact` or nothing. */
  readonly spots: readonly {
    readonly label: string;
    readonly x: number;
    readonly y: number;
    readonly holds: string;
  }[];
  /** Labels of the cavities that are flagged, and what stands on each flag. */
  readonly flagged: readonly string[];
  readonly flags: readonly string[];
  readonly title: string;
}

/** What a face shows, read from the drawing itself. */
const drawnFace = `(face) => {
    const texts = [...face.querySelectorAll('text:not(.flag-text)')].map((text) => ({ told: text.textContent, box: text.getBBox() }));
    const labelIn = ({ x, y, width, height }) => texts.filter(({ box }) =>
      box.x >= x && box.x + box.width <= x + width && box.y >= y && box.y + box.height <= y + height,
    ).map(({ told }) => told).join(' ');
    const signs = [...face.querySelectorAll('.wire, .plug, .contact')].map((one) => {
      const { x, y, width, height } = one.getBBox();
      const paint = one.getAttribute('fill');
      return { x: x + width / 2, y: y + height / 2, sign: one.classList[0] + (paint === null ? '' : ' ' + paint) };
    });
    const signIn = (box) => signs.filter(({ x, y }) =>
      x > box.x && x < box.x + box.width && y > box.y && y < box.y + box.height).map(({ sign }) => sign).join(' ');
    return {
      width: face.viewBox.baseVal.width,
      spots: [...face.querySelectorAll('rect.cavity, rect.blocked')].map((one) => one.getBBox()).map((box) => (
        { label: labelIn(box), holds: signIn(box), x: box.x + box.width / 2, y: box.y + box.height / 2 })),
      flagged: [...face.querySelectorAll('.marked')].map((one) => labelIn(one.getBBox())),
      flags: [...face.querySelectorAll('.flag-text')].map((text) => text.textContent),
      title: face.getAttribute('aria-label'),
    };
  }`;

/** Every face of a document. */
export const facesInPage = `[...document.querySelectorAll('svg.face')].map(${drawnFace})`;

/** Every step of a work instruction with the places that it tells, in order. */
export const stepsInPage = `[...document.querySelectorAll('.step')].map((step) => ({
  number: Number(step.dataset.step),
  order: step.querySelector('.order').textContent.replace(/^\\d+ ?/, ''),
  places: [...step.querySelectorAll('.place')].map((place) => {
    const address = place.querySelector('b').textContent;
    const [away, ...words] = place.textContent.slice(address.length).split(': ');
    return {
      address,
      away: away.replace(/[.] *$/, '').replace(/^, /, ''),
      words: words.join(': ').replace(/[.]$/, ''),
    };
  }),
  drawings: [...step.querySelectorAll('svg.face')].map(${drawnFace}),
}))`;

/**
 * Marks what has the same structure as an elder sibling, so that it need not be looked at again: the same tags, classes
 * and attributes all the way down, whatever is written in them. Says which ids are given twice, which that could hide.
 */
export const markRepeated = `(() => {
  const forms = new Map();
  const formOf = (one) => {
    if (one instanceof SVGElement) return one.tagName + ' ' + one.getAttribute('class');
    let form = forms.get(one);
    if (form === undefined) {
      const names = [...one.attributes].map(({ name }) => name).sort().join(' ');
      form = one.tagName + ' ' + one.className + ' ' + names + ' (' + [...one.children].map(formOf).join() + ')' + (one.children.length === 0 && one.textContent === '' ? ' empty' : '');
      forms.set(one, form);
    }
    return form;
  };
  const mark = (parent) => {
    const met = new Set();
    for (const one of parent.children) {
      const form = formOf(one);
      if (met.has(form)) one.setAttribute('data-repeated', '');
      else mark(one);
      met.add(form);
    }
  };
  mark(document.body);
  const ids = [...document.querySelectorAll('[id]')].map(({ id }) => id);
  return ids.filter((id, at) => ids.indexOf(id) !== at);
})()`;
