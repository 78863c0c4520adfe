import { defineConfig } from 'drizzle-kit';

/** `npm run migration -w packages/store` writes the SQL that takes the last schema to this one. */
export default defineConfig({ dialect: 'postgresql', schema: './src/schema.ts', out: './migrations' });
