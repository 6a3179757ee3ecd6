using System.Security.Cryptography;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Recordings;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Recordings.Readings;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Web.Tests.Hosting;

/// <summary>A sound or photograph that is there already, with its file.</summary>
public static class RecordingParcel
{
    /// <summary>Keeps one, whatever the rules say of who may send it when.</summary>
    public static async Task<Recording> KeepAsync(ClinicHost host, ReedId reed, RecordingKind kind, AccountId by, bool isFromStudio, byte[]? bytes = null, int at = 0, SoundFindings? findings = null, string? words = null)
    {
        await using var scope = host.Services.CreateAsyncScope();
        var name = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
        var read = Assert.IsType<MediaReading.Clean>(MediaFile.Read(bytes ?? (kind.IsPhoto() ? PictureFiles.Jpeg() : SoundFiles.Mp3()), kind));
        var stamp = new UploadStamp(new RecordingId(Parcel.NewOperation().Value), name, by, isFromStudio, at, DateTimeOffset.UnixEpoch);
        var upload = Assert.IsType<Outcome<Upload>.Done>(Upload.Begin(stamp, new RecordingWish(reed, kind, read.Bytes.Length) { Words = words })).Value;
        var kept = new Recording(upload, read, Convert.ToHexStringLower(SHA256.HashData(read.Bytes.Span)), TimeProvider.System.GetUtcNow());
        var path = scope.ServiceProvider.GetRequiredService<MediaFolder>().PathOf(name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        await File.WriteAllBytesAsync(path, read.Bytes, TestContext.Current.CancellationToken);
        var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
        db.Add(kept);
        if (kind.IsPlayed())
        {
            var reading = new SoundReading(kept.Id, TimeProvider.System.GetUtcNow());
            if (findings is not null)
            {
                reading.Keep(findings, TimeProvider.System.GetUtcNow());
            }

            db.Add(reading);
        }

        await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        return kept;
    }
}
