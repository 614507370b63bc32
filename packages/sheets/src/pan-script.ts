/**
 * Brings the marked cavity of a face that is wider than the screen into view when the face is first seen, and says that
 * the picture goes on. It holds no text of a kit and needs no storage.
 */
export const panScript = `
'use strict';
(() => {
  const bring = (pan) => {
    if (pan.scrollWidth <= pan.clientWidth + 1) return;
    const mark = pan.querySelector('.marked').getBoundingClientRect();
    const frame = pan.getBoundingClientRect();
    pan.scrollLeft += (mark.left + mark.right - frame.left - frame.right) / 2;
    const hint = document.createElement('span');
    hint.className = 'screen';
    hint.textContent = ' Drag the picture sideways: it goes on.';
    pan.parentElement.querySelector('figcaption').append(hint);
  };
  const seen = new IntersectionObserver((all) => {
    for (const { target, isIntersecting } of all) {
      if (!isIntersecting) continue;
      seen.unobserve(target);
      bring(target);
    }
  });
  for (const pan of document.querySelectorAll('figure > .pan')) if (pan.querySelector('.marked') !== null) seen.observe(pan);
})();
`;
