import { describe, expect, it } from "vitest";
import { aTestApp } from "#tests/support/test-app.ts";
