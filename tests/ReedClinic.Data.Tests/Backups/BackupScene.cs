using Microsoft.AspNetCore.DataProtection;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Backups;
using ReedClinic.Data.Demo;
using ReedClinic.Data.Tests.Intake;
using ReedClinic.Data.Tests.Recordings;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Reeds;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Backups;

/// <summary>A studio that is backed up: the demo, a student of its own with two files, and a folder for the copies.</summary>
internal sealed class BackupScene : IAsyncDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("reedclinic-backups-");

    public string Folder => _folder.FullName;

    public List<string> Told { get; } = [];

    public static async Task<(Actor Student, ReedId Reed)> FillAsync(TestDatabase db, bool demo = true)
    {
        if (demo)
        {
            await using var scope = db.Services.CreateAsyncScope();
            await scope.ServiceProvider.GetRequiredService<DemoStudio>().SeedAsync(Ct);
        }

        var intake = new IntakeScene(db);
        var student = await intake.StudentAsync();
        var reed = (await intake.BatchAsync(student)).Batch.Reeds[0].Id;
        var scene = new RecordingScene(db);
        await scene.SendAsync(student, reed, RecordingKind.ArrivalSound, SoundFiles.Wave());
        await scene.SendAsync(student, reed, RecordingKind.ArrivalPhoto, PictureFiles.Png());
        Seal(db, "whatever"); // has the keys made
        return (student, reed);
    }

    public static string Seal(TestDatabase db, string words) => Keys(db).Protect(words);

    public static string Unseal(TestDatabase db, string text) => Keys(db).Unprotect(text);

    public async Task<(string Folder, BackupAbout About)> MakeAsync(TestDatabase db) =>
        await db.Services.GetRequiredService<BackupMaker>().MakeAsync(Folder, withMedia: true, Told.Add, Ct);

    public static async Task<IReadOnlyList<string>> CheckAsync(TestDatabase db, string backup) =>
        (await db.Services.GetRequiredService<BackupCheck>().LookAsync(backup, Ct)).Problems;

    public Task<RestoreDone> RestoreAsync(TestDatabase db, string backup, string? erased = null) =>
        db.Services.GetRequiredService<BackupRestore>().RestoreAsync(backup, erased, although: false, Told.Add, Ct);

    /// <summary>How many rows each table has, and one number over all that stands in it.</summary>
    public static async Task<IReadOnlyList<string>> SumsAsync(TestDatabase db)
    {
        await using var context = db.CreateDbContext();
        await context.Database.OpenConnectionAsync(Ct);
        var sums = new List<string>();
        foreach (var table in context.Model.GetRelationalModel().Tables.OrderBy(table => table.Name, StringComparer.Ordinal))
        {
            sums.Add($"{table.Name} {await RowSums.OfAsync(table, context.Database.GetDbConnection(), Ct)}");
        }

        return sums;
    }

    public ValueTask DisposeAsync()
    {
        _folder.Delete(recursive: true);
        return default;
    }

    private static IDataProtector Keys(TestDatabase db) => db.Services.GetRequiredService<IDataProtectionProvider>().CreateProtector("a test");
}
