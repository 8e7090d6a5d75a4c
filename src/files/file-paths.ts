/**
 * The path of a file named inside another, relative to the folder of the one that names it; an absolute one as it is.
 * Either slash parts folders.
 */
export function pathBeside(namingFile: string, named: string): string {
  if (/^(?:[\\/]|[a-zA-Z]:[\\/])/.test(named)) return named;
  const folder = namingFile.slice(0, Math.max(namingFile.lastIndexOf('/'), namingFile.lastIndexOf('\\')) + 1);
  return folder + named.replace(/^(?:\.[\\/])+/, '');
}
