declare const VERSION: string;
declare const FILES: [string, string][];
console.log(VERSION, FILES);
