/** When the small plant of these tests stands: 2026-01-01T00:00:00Z. */
export const now = 1_767_225_600_000;
