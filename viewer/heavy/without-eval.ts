import { config } from 'zod';

// where the page is served no text may be run as code, and Firefox complains of a library that only tries whether it may
config({ jitless: true });
