/** Words of the conversation for trying it, on a clock that is moved by hand. */
export const PLAY_WORDS = {
  time: (day: string, clock: string): string => `-- ${day} ${clock} --`,
  greeting: [
    'The clock stands until you move it: "next evening", "next morning", "noon", "in 3 hours", "+20 min", "tomorrow at 15:00". What the day sends comes at its time.',
    'The weather is invented. Nothing is kept: "bye" leaves and forgets.',
  ].join('\n'),
  towns: (names: readonly string[]): string => `Towns that can be found here, all invented: ${names.join('; ')}. Anywhere else: type its latitude and longitude, such as 45.1, -72.2.`,
  clockStays: (why: 'over' | 'no-such-time' | 'too-far'): string =>
    ({
      over: 'That time is over: the clock only goes on. For example "in 3 hours" or "tomorrow at 15:00".',
      'no-such-time': 'There is no such time of day. For example "tomorrow at 15:00" or "friday at 7 pm".',
      'too-far': 'That is too far: at most 31 days at a time, such as "in 10 days".',
    })[why],
} as const;
