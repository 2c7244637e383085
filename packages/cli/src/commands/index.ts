import { blank } from './blank.js';
import { book } from './book.js';
import { check } from './check.js';
import type { Command } from './command.js';
import { completionOf } from './completion.js';
import { gallery } from './gallery.js';
import { hold } from './hold.js';
import { newOrder } from './new.js';
import { plan } from './plan.js';

const others: readonly Command[] = [newOrder, plan, blank, check, gallery, hold, book];

/** Every subcommand, in the order of the help text. */
export const commands: readonly Command[] = [...others, completionOf(others)];
