import { kitSchema } from '@loomproof/netlist';

/** The kinds of rework step that a kit file may hold, from the published schema itself. */
export const stepKinds: ReadonlySet<string> = new Set(
  kitSchema.shape.work.element.options.map((option) => option.shape.do.value),
);
