#!/usr/bin/env node
import { main, nodeEnvironment } from '../dist/index.js';

process.exitCode = await main(process.argv.slice(2), nodeEnvironment());
