import type { LikelyDepths, StartRemedy } from '../clearance/notices.ts';

const signRule = "depth runs from a part's own mating face into that part, and is negative only where it stands proud.";

const signsWrong = (file: string): string => `Likeliest the sign of all depths of ${file} is wrong`;

/** What signs of depths have to do with it that no sections share any. */
export function likelyDepthsText(likely: LikelyDepths): string {
  switch (likely.kind) {
    case 'signs':
      return `${signsWrong(likely.file)}: ${signRule}`;
    case 'inward':
      return `All depths of both parts lie on one side, each running into its own part, away from the other. ${signsWrong(likely.moving)}: what reaches past its mating face alongside ${likely.fixed} has negative depths.`;
    case 'signs-of-one':
      return `${lookAgain(likely)}: with the signs of one of them turned round sections would share depth. ${signRule[0]?.toUpperCase()}${signRule.slice(1)}`;
    case 'not-known':
      return `${lookAgain(likely)}, and at the unit they are in.`;
  }
}

const lookAgain = ({ fixed, moving }: { readonly fixed: string; readonly moving: string }): string =>
  `Look again at the depths of ${fixed} and ${moving}`;

/** What to do where the way in sets out in shared depth. */
export function startRemedyText(remedy: StartRemedy): string {
  switch (remedy.kind) {
    case 'signs':
      return `${signsWrong(remedy.file)}: ${signRule} Else put a first position farther out.`;
    case 'state-depths': {
      const ids = remedy.sections.map((id) => `"${id}"`).join(', ');
      return `Give ${ids} a depth: without one a section reaches through every depth, however far out the way begins.`;
    }
    case 'farther-out':
      return 'Put a first position farther out.';
  }
}
