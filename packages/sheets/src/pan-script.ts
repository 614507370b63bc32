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
    const caption = pan.parentElement.querySelector('figcaption');
    if (caption === null || caption.querySelector('.pan-hint') !== null) return;
    const hint = document.createElement('span');
    hint.className = 'screen pan-hint';
    hint.textContent = ' Drag the picture sideways: it goes on.';
    caption.append(hint);
  };
  const seen = new IntersectionObserver((all) => {
    for (const { target, isIntersecting } of all) {
      if (!isIntersecting) continue;
      seen.unobserve(target);
      if (target.querySelector('.marked') !== null) bring(target);
    }
  });
  const watch = (within) => {
    for (const pan of within.querySelectorAll('figure > .pan')) if (pan.querySelector('.marked') !== null) seen.observe(pan);
  };
  watch(document);
  // Faces that come later, such as those of the reading that is next, are brought into view too.
  new MutationObserver((changes) => {
    for (const { target, addedNodes } of changes) {
      if (addedNodes.length === 0) continue;
      const pan = target.closest('figure > .pan');
      if (pan === null) watch(target);
      else if (pan.querySelector('.marked') !== null) seen.observe(pan);
    }
  }).observe(document.querySelector('main'), { childList: true, subtree: true });
})();
`;
