/** How the names of Fettle's files end: a whole job in one file, a fit, a part, trial fits. */
export const jobEnding = '.job.json';
export const fitEnding = '.fit.json';
export const partEnding = '.part.json';
export const trialEnding = '.trial.json';
