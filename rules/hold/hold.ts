export type HoldWhat = 'container' | 'rack' | 'lot' | 'shot';
