; Put into every source for browsers (compile_web.sh). Clang 14 writes what it catches to this variable, which
; all threads would share; emscripten's library reads one of each thread. Clang takes the one that is there.
target datalayout = "e-m:e-p:32:32-p10:8:8-p20:8:8-i64:64-f128:64-n32:64-S128-ni:1:10:20"
target triple = "wasm32-unknown-emscripten"
@__wasm_lpad_context = weak thread_local global { i32, i8*, i32 } zeroinitializer
