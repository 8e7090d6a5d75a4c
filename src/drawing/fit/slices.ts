import type { DepthRange, Section } from '../../job/casting.ts';

/** Sections told as one: a single section, or the slices a boss was cut into for want of a prism. */
export interface NamedSections {
  readonly name: string;
  readonly sections: readonly [Section, ...Section[]];
  readonly depth: DepthRange | null;
}

const fewestSlices = 3;
const touchMm = 1e-6;

/**
 * The sections of a part by name: `boss 1`, `boss 2` … whose depths follow one another without a gap go together as
 * `boss 1–5`, three or more of them, so that a rounded boss has one label.
 */
export function namedSections(sections: readonly Section[]): readonly NamedSections[] {
  const stems = new Map<string, Section[]>();
  for (const section of sections) {
    const stem = stemOf(section);
    stems.set(stem, [...(stems.get(stem) ?? []), section]);
  }
  const slicesOf = (section: Section): Section[] | undefined => {
    const alike = stems.get(stemOf(section)) ?? [];
    return alike.length >= fewestSlices && areStacked(alike) ? alike : undefined;
  };
  return sections.flatMap((section): NamedSections[] => {
    const slices = slicesOf(section);
    if (slices === undefined) return [{ name: section.id, sections: [section], depth: section.depth }];
    return slices[0] === section ? [together(stemOf(section), section, slices)] : [];
  });
}

const stemOf = ({ id }: Section): string => id.replace(/\d+$/, '');

function areStacked(sections: readonly Section[]): boolean {
  const depths = sections.map(({ depth }) => depth).filter((depth) => depth !== null);
  if (depths.length < sections.length) return false;
  const sorted = depths.sort((a, b) => a.fromMm - b.fromMm);
  return sorted.slice(1).every(({ fromMm }, i) => Math.abs(fromMm - (sorted[i] as DepthRange).toMm) < touchMm);
}

function together(stem: string, first: Section, slices: readonly Section[]): NamedSections {
  const depths = slices.flatMap(({ depth }) => (depth === null ? [] : [depth]));
  const numbers = slices.map(({ id }) => id.slice(stem.length));
  return {
    name: `${stem}${numbers[0]}–${numbers.at(-1)}`,
    sections: [first, ...slices.slice(1)],
    depth: {
      fromMm: Math.min(...depths.map(({ fromMm }) => fromMm)),
      toMm: Math.max(...depths.map(({ toMm }) => toMm)),
    },
  };
}
