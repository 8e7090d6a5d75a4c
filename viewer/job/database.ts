/** Pages opened from a disk may share one storage with any other page: the name says whose it is. */
const databaseName = 'fettle-viewer-jobs';
const version = 1;

/** The stores: what a job is without the bytes of its pictures, and those bytes. */
const stores = { jobs: 'jobs', pictures: 'pictures' } as const;

/** Pictures lie under `[job, picture]`; everything of one job lies between these. */
export const picturesOf = (job: string): IDBKeyRange => IDBKeyRange.bound([job], [job, []]);

let opened: Promise<IDBDatabase> | null = null;

/**
 * Does some work in one transaction and gives its result once that is on the disk: all of it, or none of it.
 * Rejects with what the browser says, or with what the work throws.
 */
export async function transact<T>(
  mode: IDBTransactionMode,
  work: (jobs: IDBObjectStore, pictures: IDBObjectStore) => Promise<T>,
): Promise<T> {
  const database = await openDatabase();
  const transaction = database.transaction([stores.jobs, stores.pictures], mode, { durability: 'strict' });
  const done = ended(transaction);
  try {
    const result = await work(transaction.objectStore(stores.jobs), transaction.objectStore(stores.pictures));
    await done;
    return result;
  } catch (error) {
    abort(transaction);
    await done.catch(() => {});
    // what ended it, where it was not the work: a disk that is full shows in the work only as an end
    throw transaction.error ?? error;
  }
}

/** What a request gives, inside its transaction. */
export const resultOf = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((take, fail) => {
    request.onsuccess = () => take(request.result);
    request.onerror = () => fail(request.error);
  });

function ended(transaction: IDBTransaction): Promise<void> {
  const done = new Promise<void>((take, fail) => {
    transaction.oncomplete = () => take();
    transaction.onabort = () => fail(transaction.error ?? new DOMException('stopped', 'AbortError'));
  });
  // whoever awaits it hears of it; that may be later than it ends
  done.catch(() => {});
  return done;
}

function abort(transaction: IDBTransaction): void {
  try {
    transaction.abort();
  } catch {
    // it had ended of itself
  }
}

/** One connection for all; a failed or lost one is tried anew the next time. */
function openDatabase(): Promise<IDBDatabase> {
  opened ??= connect().catch((error: unknown) => {
    opened = null;
    throw error;
  });
  return opened;
}

function connect(): Promise<IDBDatabase> {
  return new Promise((take, fail) => {
    const request = indexedDB.open(databaseName, version);
    request.onupgradeneeded = () => {
      request.result.createObjectStore(stores.jobs, { keyPath: 'id' });
      request.result.createObjectStore(stores.pictures);
    };
    request.onblocked = () => fail(new DOMException('held by another page', 'TimeoutError'));
    request.onerror = () => fail(request.error);
    request.onsuccess = () => take(letGo(request.result));
  });
}

/** A later version of the page, or the browser, may want the database: it is not held against them. */
function letGo(database: IDBDatabase): IDBDatabase {
  const lost = (): void => {
    opened = null;
  };
  database.onversionchange = () => {
    database.close();
    lost();
  };
  database.onclose = lost;
  return database;
}
