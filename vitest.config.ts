import { defineConfig } from 'vitest/config';

export default defineConfig({
  resolve: { conditions: ['rideout-source'] },
  ssr: { resolve: { conditions: ['rideout-source'] } },
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/pages/build-once.ts'],
    testTimeout: 60_000,
  },
});
