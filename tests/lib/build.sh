# Building, publishing and checking the layout. Part of tests/run.sh.
# shellcheck shell=bash

build() {
  local layout code=0
  dotnet restore ReedClinic.sln --locked-mode --verbosity quiet || stop_here "the packages could not be restored."
  # Tests compute a lot; what is only optimised tells the same. (A plain `dotnet build` isn't, for whoever steps through it.)
  dotnet build ReedClinic.sln --no-restore --verbosity quiet -warnaserror -p:Optimize=true || stop_here "the solution does not build without warnings."
  # Code style is an error in the build; what is left to check is layout.
  dotnet format whitespace --verify-no-changes --folder . &
  layout=$!
  # Once for all projects: two that run at a time would publish over each other.
  published=$(dotnet tests/ReedClinic.KillDriver/bin/Debug/net10.0/ReedClinic.KillDriver.dll publish) || code=$?
  wait "$layout" || stop_here "the formatting is off: run 'dotnet format whitespace --folder .'"
  [ "$code" -eq 0 ] || stop_here "the program could not be published."
  export REEDCLINIC_TEST_PUBLISHED=$published
  end_compiler
}

# The compiler's server of this run, known by the name of its pipe.
end_compiler() {
  local server
  server=$(dotnet --list-sdks | sed -nE "s/^$(dotnet --version) \[(.*)\]$/\1/p")/$(dotnet --version)/Roslyn/bincore/VBCSCompiler
  [ ! -x "$server" ] || "$server" -shutdown "-pipename:$SharedCompilationId" > /dev/null 2>&1
}
