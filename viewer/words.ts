/** Every word of the page that the answers do not bring with them, in one place. */
export const words = {
  invitation: 'Will it go together, and what must come off? Open a fit and its parts; nothing leaves this machine.',
  open: 'Open or drop the fit and its part files',
  missing: 'Still wanted: open the files it names as well.',
  noFit: 'Open the fit too: a file that ends in .fit.json.',
  working: (step: string, done: number, of: number): string => `Working: ${step}, ${done} of ${of}`,
  broke: (why: string): string => `Fettle itself went wrong here: ${why}`,
  layers: 'Show',
  nearer: (view: string): string => `${view} larger`,
  further: (view: string): string => `${view} smaller`,
} as const;

/** What can be shown or left out, and the roles it stands for; what is in none of them always shows. */
export const layerSwitches = [
  { name: 'fixed part', roles: ['fixed-metal', 'fixed', 'fixed-behind', 'hole', 'dowel'] },
  { name: 'moving part', roles: ['moving', 'moving-beyond', 'moving-hole', 'moving-text'] },
  { name: 'room it swings through', roles: ['room', 'on-the-way'] },
  { name: 'foul', roles: ['foul', 'first-touch'] },
  { name: 'metal to take off', roles: ['relief', 'relief-hatch', 'first-line', 'last-line'] },
  { name: 'what must stay', roles: ['do-not-cut', 'hollow', 'traced'] },
  { name: 'rotating parts', roles: ['rotating'] },
  { name: 'names', roles: ['text', 'moving-text', 'leader'] },
] as const;

/** The views of the sheet that the page shows, with the views that stand with each. */
export const figures = [
  { name: 'Face view', views: ['face-caption', 'face-view', 'scale-bar'] },
  { name: 'Side view', views: ['side-caption', 'side-view', 'depths'] },
  { name: 'Details', views: ['detail-a', 'detail-b', 'detail-c', 'detail-d'] },
  { name: 'Legend', views: ['legend'] },
] as const;
