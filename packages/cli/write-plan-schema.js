// Writes plan.schema.json from the schema that plan files are read with. Run it after a build:
//   npx tsc -b && node packages/cli/write-plan-schema.js
import { writeFileSync } from 'node:fs';
import { planJsonSchema } from './dist/plan-file/plan-json-schema.js';

writeFileSync(new URL('./plan.schema.json', import.meta.url), planJsonSchema());
