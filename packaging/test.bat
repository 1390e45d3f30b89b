@echo off
rem UNTESTED: the Windows twin of packaging/test, written from it and never run on Windows.
rem Runs every check of a checkout, the test-suite last; arguments go to pytest.
setlocal
cd /d "%~dp0.."
set PYTHON=.venv\Scripts\python.exe
set WANTED=packaging\requirements-dev.txt
set STAMP=.venv\stamp-test.txt

if exist "%STAMP%" fc /b "%WANTED%" "%STAMP%" >nul 2>&1 && goto ready
if not exist "%PYTHON%" py -3 -m venv .venv || python -m venv .venv || exit /b 1
"%PYTHON%" -m pip install --quiet --no-build-isolation --no-deps --require-hashes -r packaging\requirements.txt || exit /b 1
"%PYTHON%" -m pip install --quiet --no-build-isolation --no-deps --require-hashes -r packaging\requirements-dev.txt || exit /b 1
"%PYTHON%" -m pip install --quiet --no-build-isolation --no-deps -e . || exit /b 1
copy /y "%WANTED%" "%STAMP%" >nul

:ready
"%PYTHON%" -m ruff check . || exit /b 1
"%PYTHON%" -m ruff format --check . || exit /b 1
"%PYTHON%" -m mypy || exit /b 1
.venv\Scripts\lint-imports.exe || exit /b 1
"%PYTHON%" -m pytest %*
