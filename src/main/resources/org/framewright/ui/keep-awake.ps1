# Keeps the displays awake while a process runs; its number follows. ES_CONTINUOUS, _SYSTEM_REQUIRED, _DISPLAY_REQUIRED.
$call = Add-Type -Name Power -PassThru -MemberDefinition '[DllImport("kernel32.dll")] public static extern uint SetThreadExecutionState(uint state);'
[void]$call::SetThreadExecutionState([uint32]"0x80000003")
Wait-Process -Id 