using System.Globalization;
using Npgsql;
using Testcontainers.PostgreSql;

[assembly: AssemblyFixture(typeof(ReedClinic.Containers.Tests.Running.PostgresContainer))]

namespace ReedClinic.Containers.Tests.Running;

/// <summary>One PostgreSQL in a container for the whole run, gone with it.</summary>
public sealed class PostgresContainer : IAsyncLifetime
{
    /// <summary>Names the image; the official one otherwise.</summary>
    public const string GivenBy = "REEDCLINIC_POSTGRES_IMAGE";

    private const string Official = "postgres:17";

    private readonly PostgreSqlContainer _container = new PostgreSqlBuilder(
        Environment.GetEnvironmentVariable(GivenBy) is { Length: > 0 } given ? given : Official).Build();

    private int _count;

    public async ValueTask InitializeAsync() => await _container.StartAsync();

    public ValueTask DisposeAsync()
    {
        NpgsqlConnection.ClearAllPools();
        return _container.DisposeAsync();
    }

    /// <summary>A database without any table.</summary>
    public async Task<TestDatabase> BareAsync(CancellationToken ct)
    {
        var name = string.Create(CultureInfo.InvariantCulture, $"smoke_{Interlocked.Increment(ref _count)}");
        await using var connection = new NpgsqlConnection(_container.GetConnectionString());
        await connection.OpenAsync(ct);
        await using var create = connection.CreateCommand();
#pragma warning disable CA2100 // made in this class
        create.CommandText = $"CREATE DATABASE {name}";
#pragma warning restore CA2100
        await create.ExecuteNonQueryAsync(ct);
        return new TestDatabase(
            ClinicEngine.Postgres, new NpgsqlConnectionStringBuilder(_container.GetConnectionString()) { Database = name }.ToString());
    }
}
