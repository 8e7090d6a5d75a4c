/** True length of the check bars, mm. */
export const barMm = 150;

/**
 * What a printer makes of 150 mm, measured on the check bars: `xMm` along the short side of the paper, `yMm` along the
 * long one. A true printer gives 150 for both.
 */
export interface BarReading {
  readonly xMm: number;
  readonly yMm: number;
}

export const trueBars: BarReading = { xMm: barMm, yMm: barMm };

/** A bar is out by no more than this, mm, unless the page was fitted to other paper. */
export const mostOffMm = 10;

/** Whether a printer that was not asked to fit the page makes such bars. */
export const isReading = ({ xMm, yMm }: BarReading): boolean =>
  [xMm, yMm].every((mm) => Math.abs(mm - barMm) <= mostOffMm);
