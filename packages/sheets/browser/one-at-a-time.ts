import { byId } from './element.ts';

/** Shows the steps and the groups of readings one at a time, or all. */
export function oneAtATimePart(): void {
  const leaves = [...document.querySelectorAll<HTMLElement>('.step, .leaf')];
  const [mode, back, next] = ['mode', 'back', 'next'].map((id) => byId(id) as HTMLButtonElement);
  let current = 0;
  // What says that the kit is not proved stays on the screen, and the buttons below it.
  const banner = document.getElementById('unproved');
  const makeRoom = (): void => {
    document.body.style.setProperty(
      '--banner',
      `${Math.ceil(banner?.getBoundingClientRect().height ?? 0)}px`,
    );
  };
  addEventListener('resize', makeRoom);
  makeRoom();
  const turn = (to: number): void => {
    current = Math.min(leaves.length - 1, Math.max(0, to));
    for (const [index, leaf] of leaves.entries()) leaf.classList.toggle('current', index === current);
    if (back !== undefined) back.disabled = current === 0;
    if (next !== undefined) next.disabled = current === leaves.length - 1;
  };
  /** A new step begins at its cautions, however far the last one was scrolled. */
  const turnTo = (to: number): void => {
    turn(to);
    document.querySelector('main')?.scrollIntoView({ block: 'start' });
  };
  mode?.addEventListener('click', () => {
    const single = document.body.classList.toggle('single');
    mode.textContent = single ? 'Show all steps' : 'One step at a time';
    for (const one of [back, next]) if (one !== undefined) one.hidden = !single;
    turn(current);
  });
  back?.addEventListener('click', () => turnTo(current - 1));
  next?.addEventListener('click', () => turnTo(current + 1));
  turn(0);
}
