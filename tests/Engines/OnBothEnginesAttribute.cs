using System.Reflection;
using Xunit.Sdk;
using Xunit.v3;

namespace ReedClinic.Tests.Engines;

/// <summary>Runs one test body on SQLite and on PostgreSQL: <c>[Theory, OnBothEngines]</c>.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class OnBothEnginesAttribute : DataAttribute
{
    public override ValueTask<IReadOnlyCollection<ITheoryDataRow>> GetData(
        MethodInfo testMethod, DisposalTracker disposalTracker) =>
        new([new TheoryDataRow<ClinicEngine>(ClinicEngine.Sqlite), new TheoryDataRow<ClinicEngine>(ClinicEngine.Postgres)]);

    public override bool SupportsDiscoveryEnumeration() => true;
}
