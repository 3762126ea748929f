# Installs, uses and removes the .msi of target/installer on Windows. Not run yet by anybody: docs/three-systems.md says so.
$ErrorActionPreference = 'Stop'
$out = 'target\installer'
$logs = (New-Item -ItemType Directory -Force "$out\logs").FullName
$msi = (Get-ChildItem "$out\*.msi").FullName

function Tried($what, $code) { if ($code -ne 0) { throw "$what ended with $code" } }

function Install($action, $log) {
  $ended = Start-Process msiexec -Wait -PassThru -ArgumentList "$action `"$msi`" /qn /l*v `"$logs\$log`""
  Tried "msiexec $action" $ended.ExitCode
}

# Archives of Windows keep the local time: a cache that was made in one time zone must hold in another.
$zone = (Get-TimeZone).Id
Set-TimeZone -Id 'Tokyo Standard Time'
try {
  Install '/i' 'install.log'
  $env:PATH = [Environment]::GetEnvironmentVariable('PATH', 'Machine')
  $env:JAVA_HOME = $null
  Push-Location $env:TEMP
  framewright --version
  Tried 'framewright --version' $LASTEXITCODE
  $env:FRAMEWRIGHT_JAVA_OPTIONS = '-XX:AOTMode=on'
  $folder = New-Item -ItemType Directory -Force ($env:TEMP + '\F' + [char]0xEA + 'te')
  framewright demo --tiny --into $folder.FullName
  Tried 'framewright demo, with its cache' $LASTEXITCODE
  $env:FRAMEWRIGHT_JAVA_OPTIONS = $null
} finally {
  Set-TimeZone -Id $zone
  Pop-Location
}
if (-not (Test-Path "$env:ProgramData\Microsoft\Windows\Start Menu\Programs\Framewright.lnk")) { throw 'no entry in the menu' }
Install '/x' 'remove.log'
if (Test-Path "$env:ProgramFiles\Framewright") { throw 'something is left of the program' }
if ([Environment]::GetEnvironmentVariable('PATH', 'Machine') -match 'Framewright') { throw 'something is left in the PATH' }
if (-not (Test-Path $folder.FullName)) { throw 'a folder of the user is gone' }
