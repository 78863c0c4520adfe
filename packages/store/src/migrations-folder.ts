import { fileURLToPath } from 'node:url';

/** SQL written by drizzle-kit, the same for both databases; found from the sources and from the built files. */
export const migrationsFolder = fileURLToPath(new URL('../migrations', import.meta.url));
