@echo off
rem UNTESTED: the Windows twin of packaging/run, written from it and never run on Windows.
rem Opens detailbench from a checkout; arguments go to the program.
setlocal
cd /d "%~dp0.."
set PYTHON=.venv\Scripts\python.exe
set WANTED=packaging\requirements.txt
set STAMP=.venv\stamp-run.txt

if exist "%STAMP%" fc /b "%WANTED%" "%STAMP%" >nul 2>&1 && goto ready
if not exist "%PYTHON%" py -3 -m venv .venv || python -m venv .venv || exit /b 1
"%PYTHON%" -m pip install --quiet --no-build-isolation --no-deps --require-hashes -r packaging\requirements.txt || exit /b 1
"%PYTHON%" -m pip install --quiet --no-build-isolation --no-deps -e . || exit /b 1
copy /y "%WANTED%" "%STAMP%" >nul

:ready
"%PYTHON%" -m detailbench %*
