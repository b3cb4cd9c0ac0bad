/** How soon somebody must act (ISA-18.2). Says nothing of who can be hurt; that is the signal word. */
export type Priority = 'high' | 'medium' | 'low';
export const priorities: readonly Priority[] = ['high', 'medium', 'low'];
