/**
 * The page's security policy forbids making code from text. The schema library would try, fail, and go on without,
 * leaving a complaint on the console; this tells it not to try. Imported before the schema is.
 */
import { config } from 'zod';

config({ jitless: true });
