/** Cases for `test.each`, with the title of each in full for `%s`: `$title` cuts it short and puts it in quotes. */
export const titled = <Case extends object>(
  cases: readonly Case[],
  titleOf: (one: Case) => string = (one) => (one as Case & { readonly title: string }).title,
): (readonly [title: string, one: Case])[] => cases.map((one) => [titleOf(one), one]);
