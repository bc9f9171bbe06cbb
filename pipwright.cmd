@echo off
rem Starts Pipwright on Windows from a checkout, building it first if it was never built. It does not see whether sources have
rem changed since: remove eval-cli\target\own to build again. Not tried on Windows yet.
setlocal
set "home=%~dp0"
if exist "%home%eval-cli\target\own" goto run
echo building Pipwright (first use) ... 1>&2
pushd "%home%"
call mvnw.cmd -q -B -ntp -Dmaven.test.skip=true -pl eval-cli -am package
if errorlevel 1 (
    popd
    echo pipwright: the build failed 1>&2
    exit /b 1
)
popd
:run
set "PIPWRIGHT_CLASSPATH=%home%eval-cli\target\*;%home%eval-cli\target\own\*;%home%eval-cli\target\lib\*"
call "%home%dist\src\bin\pipwright.cmd" %*
exit /b %errorlevel%
