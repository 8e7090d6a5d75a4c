/** What the viewer's server answers to one request. */
export interface Reply {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string;
}

export const jsonReply = (status: number, value: unknown): Reply => ({
  status,
  headers: { 'Content-Type': 'application/json; charset=utf-8' },
  body: JSON.stringify(value),
});

/** An empty page that tells nothing, least of all whether there is something else to find. */
export const nothingHere: Reply = { status: 404, headers: {}, body: '' };
