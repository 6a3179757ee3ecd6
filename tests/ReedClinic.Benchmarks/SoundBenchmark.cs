using System.Diagnostics;
using System.Globalization;
using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Recordings.Readings;
using ReedClinic.Measurement.Sound.Decoding;
using ReedClinic.Measurement.Sound.Readings;
using ReedClinic.Measurement.Sound.Tracking;
using ReedClinic.Measurement.Tests.Sound.Synthetic;

namespace ReedClinic.Benchmarks;

/// <summary>What tests/sound.sh asks for: clips with known truth as files, what is read from files, and how long it takes.</summary>
internal static class SoundBenchmark
{
    /// <summary>From B♭3 to F6, as in the tests.</summary>
    private static readonly double[] Notes = [.. Enumerable.Range(0, 12).Select(i => 440 * Math.Pow(2, (58 - 69 + (i * 31 / 11.0)) / 12))];

    public static Task<int> RunAsync(string[] args) => args switch
    {
        ["make", var folder] => MakeAsync(folder),
        ["crows"] => CrowBenchmark.RunAsync(),
        ["read", .. var files] => ReadAsync(files),
        ["time", var file] => TimeAsync(file),
        _ => Task.FromResult(2),
    };

    /// <summary>Writes steady tones, vibrati and a minute of tone as waves; the truth is in each name: note, kind, seed.</summary>
    private static async Task<int> MakeAsync(string folder)
    {
        foreach (var (index, note) in Notes.Index())
        {
            foreach (var ratio in (int[])[20, 10])
            {
                await SaveAsync(folder, $"steady{ratio}", note, SyntheticTone.Make(note, SyntheticTone.Reedy, 2, ratio, 100 + index)).ConfigureAwait(false);
            }

            await SaveAsync(folder, "vibrato", note, SyntheticTone.Make(note, SyntheticTone.Reedy, 2, 40, 100 + index, time => 50 * Math.Sin(2 * Math.PI * 5 * time))).ConfigureAwait(false);
        }

        await SaveAsync(folder, "minute", 440, SyntheticTone.Make(440, SyntheticTone.Reedy, 59, 30, 1, time => 20 * Math.Sin(2 * Math.PI * 5 * time))).ConfigureAwait(false);
        await SaveAsync(folder, "ten", 440, SyntheticTone.Make(440, SyntheticTone.Reedy, 10, 30, 1, time => 20 * Math.Sin(2 * Math.PI * 5 * time))).ConfigureAwait(false);
        return 0;
    }

    /// <summary>One line for each frame that has a pitch: file, seconds, hertz.</summary>
    private static async Task<int> ReadAsync(string[] files)
    {
        foreach (var file in files)
        {
            if (SoundDecoder.Decode(await File.ReadAllBytesAsync(file).ConfigureAwait(false), DecodeLimits.Usual) is not DecodeResult.Done done)
            {
                return 1;
            }

            foreach (var frame in PitchTracker.Track(done.Clip.Samples.Span).Frames.Where(frame => frame.IsVoiced))
            {
                await Console.Out.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{Path.GetFileNameWithoutExtension(file)} {frame.Seconds:0.00000} {frame.Hertz:0.00000}")).ConfigureAwait(false);
            }
        }

        return 0;
    }

    /// <summary>Milliseconds by the clock (the middle of many rounds, and the least), bytes taken, processor time a round, collecting garbage included: pitch alone, decoding, decoding and all readings, the same with all that is kept and drawn.</summary>
    private static async Task<int> TimeAsync(string file)
    {
        var bytes = await File.ReadAllBytesAsync(file).ConfigureAwait(false);
        var clip = ((DecodeResult.Done)SoundDecoder.Decode(bytes, DecodeLimits.Usual)).Clip;
        await SayAsync("pitch", clip.Seconds, () => PitchTracker.Track(clip.Samples.Span).Frames.Count).ConfigureAwait(false);
        await SayAsync("decode", clip.Seconds, () => SoundDecoder.Decode(bytes, DecodeLimits.Usual) is DecodeResult.Done ? 1 : 0).ConfigureAwait(false);
        await SayAsync("all", clip.Seconds, () => ClipAnalyser.Analyse(((DecodeResult.Done)SoundDecoder.Decode(bytes, DecodeLimits.Usual)).Clip.Samples.Span).Partials.Count).ConfigureAwait(false);
        await SayAsync("shown", clip.Seconds, () => Shown(((DecodeResult.Done)SoundDecoder.Decode(bytes, DecodeLimits.Usual)).Clip)).ConfigureAwait(false);
        return 0;
    }

    /// <summary>All that is kept of a clip and all drawings of its page, the spectrogram too, for a wide and for a narrow place: how many parts they have.</summary>
    private static int Shown(SoundClip clip)
    {
        var found = ClipReport.Of(clip);
        var track = new SoundTrack(new SoundPicture(SoundKind.Crow, found.Figures, CrowTarget.OnC(Tuning.Standard), HasBand: true), SoundSeries.Read(found.Series.ToBytes())!);
        return found.Picture.Length + ((bool[])[true, false]).Sum(isWide =>
            SoundSketch.Of(track.Picture, isWide).Parts.Count + SoundPlots.Pitch(track, isWide).Drawing.Parts.Count
            + SoundPlots.Level(track, isWide).Drawing.Parts.Count + SoundPlots.Beside(track, track, isWide).Drawing.Parts.Count);
    }

    private static async Task SayAsync(string what, double seconds, Func<int> work)
    {
        const int rounds = 31, warming = 12;
        var times = new List<double>();
        long taken = 0;
        using var process = Process.GetCurrentProcess();
        var spent = TimeSpan.Zero;
        for (var round = 0; round < rounds + warming; round++)
        {
            if (round == warming)
            {
                process.Refresh();
                spent = process.TotalProcessorTime;
            }

            var before = GC.GetAllocatedBytesForCurrentThread();
            var began = Stopwatch.GetTimestamp();
            work();
            times.Add(Stopwatch.GetElapsedTime(began).TotalMilliseconds);
            taken = GC.GetAllocatedBytesForCurrentThread() - before;
        }

        process.Refresh();
        spent = process.TotalProcessorTime - spent;
        var sorted = times.Skip(warming).Order().ToList();
        await Console.Out.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{what} {seconds:0.000} {sorted[rounds / 2]:0.00} {sorted[0]:0.00} {taken} {spent.TotalMilliseconds / rounds:0.00}")).ConfigureAwait(false);
    }

    private static async Task SaveAsync(string folder, string kind, double note, float[] samples)
    {
        var path = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{kind}_{note:0.000000}.wav"));
        using var bytes = new MemoryStream();
        await using var writer = new BinaryWriter(bytes);
        writer.Write("RIFF"u8);
        writer.Write(36 + (2 * samples.Length));
        writer.Write("WAVEfmt "u8);
        writer.Write(16);
        writer.Write((short)1);
        writer.Write((short)1);
        writer.Write(SyntheticTone.Rate);
        writer.Write(2 * SyntheticTone.Rate);
        writer.Write((short)2);
        writer.Write((short)16);
        writer.Write("data"u8);
        writer.Write(2 * samples.Length);
        foreach (var sample in samples)
        {
            writer.Write((short)Math.Clamp(Math.Round(sample * 32_767.0), -32_768, 32_767));
        }

        await File.WriteAllBytesAsync(path, bytes.ToArray()).ConfigureAwait(false);
    }
}
