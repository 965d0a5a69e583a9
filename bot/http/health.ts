import { withoutTokens } from '../without-tokens.js';

/** Null while all is well; else what is wrong, in a few words. */
export type Check = () => string | null | Promise<string | null>;

export interface Health {
  readonly ok: boolean;
  /** Each check by its name: "ok", or what is wrong. */
  readonly checks: Readonly<Record<string, string>>;
}

/** A check that hangs is a check that fails; whoever asks us gives up soon after. Project estimate. */
export const LONGEST_CHECK_MS = 3_000;

export async function healthOf(checks: Readonly<Record<string, Check>>, longestMs = LONGEST_CHECK_MS): Promise<Health> {
  const results = await Promise.all(Object.entries(checks).map(async ([name, check]) => [name, await troubleOf(check, longestMs)] as const));
  return { ok: results.every(([, trouble]) => trouble === null), checks: Object.fromEntries(results.map(([name, trouble]) => [name, trouble ?? 'ok'])) };
}

async function troubleOf(check: Check, longestMs: number): Promise<string | null> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<string>((resolve) => (timer = setTimeout(() => resolve(`no answer within ${longestMs / 1000} s`), longestMs)));
  try {
    const trouble = await Promise.race([late, check()]);
    return trouble === null ? null : withoutTokens(trouble);
  } catch (error) {
    return withoutTokens(error instanceof Error ? error.message : String(error));
  } finally {
    clearTimeout(timer);
  }
}
