using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using ReedClinic.Data.Recordings;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Reeds;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Recordings;

/// <summary>Sends sounds and photographs, and looks at what lies on the disk.</summary>
internal sealed class RecordingScene(TestDatabase db, TimeProvider? time = null, IDbContextFactory<ClinicDb>? databases = null)
{
    private readonly TimeProvider _time = time ?? TimeProvider.System;

    public TestDatabase Database => db;

    public MediaFolder Folder { get; } = db.Services.GetRequiredService<MediaFolder>();

    public UploadBook Uploads => new(databases ?? db, Folder, _time);

    public RecordingsBook Recordings => new(databases ?? db, Folder, _time);

    public MediaCaretaker Caretaker => new(db, Folder, _time, NullLogger<MediaCaretaker>.Instance);

    /// <summary>Every file that lies in the folder, by its path within.</summary>
    public IReadOnlyList<string> Lying => Directory.Exists(Folder.Path)
        ? [.. Directory.EnumerateFiles(Folder.Path, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(Folder.Path, file)).Order(StringComparer.Ordinal)]
        : [];

    public static string Sum(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    /// <summary>Begins and sends a file, in pieces, and doesn't finish.</summary>
    public async Task<RecordingId> PutAsync(Actor actor, ReedId reed, RecordingKind kind, byte[] bytes, int piece = RecordingLimits.Chunk, string? words = null)
    {
        var going = Done(await Uploads.StartAsync(actor, new RecordingWish(reed, kind, bytes.Length) { Words = words }, Operation(), Ct));
        for (var at = 0; at < bytes.Length; at += piece)
        {
            var answer = await Uploads.AppendAsync(actor, going.Id, at, new MemoryStream(bytes, at, Math.Min(piece, bytes.Length - at)), RecordingLimits.Chunk, Ct);
            Assert.Equal(new ChunkAnswer(ChunkEnd.Taken, Math.Min(bytes.Length, at + piece)), answer);
        }

        return going.Id;
    }

    public async Task<RecordingView> SendAsync(Actor actor, ReedId reed, RecordingKind kind, byte[] bytes, int piece = RecordingLimits.Chunk, string? words = null) =>
        Done(await Uploads.FinishAsync(actor, await PutAsync(actor, reed, kind, bytes, piece, words), Sum(bytes), Operation(), Ct));

    public static Problem Refused<T>(Outcome<T> outcome) => Assert.Single(Assert.IsType<Outcome<T>.Refused>(outcome).Problems);
}
