using Microsoft.EntityFrameworkCore;

namespace ReedClinic.Data.Engine;

/// <summary>
/// Lets a Book ask for a <see cref="ClinicDb"/> without knowing the engine: EF's own factory isn't covariant.
/// </summary>
/// <typeparam name="TDb">The engine's own context.</typeparam>
public sealed class ClinicDbFactory<TDb>(IDbContextFactory<TDb> engine) : IDbContextFactory<ClinicDb>
    where TDb : ClinicDb
{
    /// <inheritdoc />
    public ClinicDb CreateDbContext() => engine.CreateDbContext();
}
