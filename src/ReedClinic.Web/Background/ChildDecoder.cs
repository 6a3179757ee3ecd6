using System.ComponentModel;
using System.Diagnostics;
using System.Text;
using ReedClinic.Measurement.Sound.Decoding;

namespace ReedClinic.Web.Background;

/// <summary>
/// Has another program decode the forms for which there is no decoder here, AAC and Apple Lossless in MP4 and FLAC, where the studio
/// named one: a child with limits, behind walls where they can be had, of whose output no more is taken than a minute’s samples.
/// </summary>
/// <param name="programs">Which programs.</param>
/// <param name="log">The log. What the child complained of stands in it, cut to a few hundred characters, and is shown to nobody.</param>
public sealed partial class ChildDecoder(ChildPrograms programs, ILogger<ChildDecoder> log)
{
    private const int MostSaid = 300;
    private const int Piece = 1 << 16;
    private const string OfWalls = "bwrap: "; // it says so itself where the walls or what is in them can’t be had
    private static readonly int[] NotStarted = [126, 127];
    private static readonly TimeSpan Grace = TimeSpan.FromSeconds(5);

    private bool? _hasWalls;

    /// <summary>Whether a form is decoded here.</summary>
    /// <param name="form">The form, as the content told it.</param>
    public bool Reads(SoundForm? form) => programs.CanRun && ChildPrograms.NameOf(form) is not null;

    /// <summary>Whether any form is decoded here.</summary>
    public bool ReadsAny => programs.CanRun;

    /// <summary>Whether what lies in a file is of a form that is decoded here.</summary>
    /// <param name="path">The file.</param>
    public bool ReadsFile(string path)
    {
        var head = new byte[Piece];
        try
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete);
            return Reads(SoundForms.Of(head.AsSpan(0, file.ReadAtLeast(head, Piece, throwOnEndOfStream: false))));
        }
        catch (Exception unread) when (unread is IOException or UnauthorizedAccessException)
        {
            return false; // one file that can't be opened doesn't keep the others waiting
        }
    }

    /// <summary>Decodes a sound.</summary>
    /// <param name="path">Its file.</param>
    /// <param name="form">Its form; one that <see cref="Reads"/> takes.</param>
    /// <param name="limits">How much is read at the most.</param>
    /// <param name="ct">Ends it with all that it started; nothing goes on after that.</param>
    /// <exception cref="DecoderAwayException">The decoder can’t be started: that is the studio’s to mend, and no fault of the file.</exception>
    public async Task<DecodeResult> DecodeAsync(string path, SoundForm form, DecodeLimits limits, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(limits);
        if (new FileInfo(path).Length > limits.Bytes)
        {
            return new DecodeResult.Refused(DecodeRefusal.TooManyBytes, form);
        }

        if (!File.Exists(programs.Decoder))
        {
            throw new DecoderAwayException($"{ChildPrograms.Setting} names a program that isn’t there.");
        }

        // A second more than is taken, to tell what is too long.
        var seconds = limits.Seconds + 1;
        var line = programs.Decoding(path, form, seconds, await HasWallsAsync(ct).ConfigureAwait(false));
        var ended = await RunAsync(line, seconds * SoundClip.Rate * sizeof(float), ct).ConfigureAwait(false);
        if (ended.Samples is null)
        {
            return new DecodeResult.Refused(DecodeRefusal.TooLong, form);
        }

        if (ended.Code == 0)
        {
            return SoundDecoder.OfSamples(ended.Samples, form, limits);
        }

        Complained(log, ended.Code, ended.Said);
        return NotStarted.Contains(ended.Code) || ended.Said.StartsWith(OfWalls, StringComparison.Ordinal)
            ? throw new DecoderAwayException($"What {ChildPrograms.Setting} names can’t be started.")
            : new DecodeResult.Refused(DecodeRefusal.Damaged, form);
    }

    // Asked once: whether they can be had doesn’t change while the program runs.
    private async Task<bool> HasWallsAsync(CancellationToken ct)
    {
        if (_hasWalls is null)
        {
            _hasWalls = programs.Walls is not null && (await RunAsync(programs.Asking(), Piece, ct).ConfigureAwait(false)).Code == 0;
            if (_hasWalls == false)
            {
                WithoutWalls(log);
            }
        }

        return _hasWalls.Value;
    }

    private static async Task<Ended> RunAsync(IReadOnlyList<string> line, int most, CancellationToken ct)
    {
        ct.ThrowIfCancellationRequested();
        var start = new ProcessStartInfo(line[0], line.Skip(1)) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = "/" };
        start.Environment.Clear();
        using var process = Start(start);
        using var stop = ct.Register(() => Kill(process));
        try
        {
            process.StandardInput.Close();
            var saying = HeadAsync(process.StandardError.BaseStream);
            var samples = await TakeAsync(process.StandardOutput.BaseStream, most).WaitAsync(ct).ConfigureAwait(false);
            if (samples is null)
            {
                return new Ended(-1, null, "");
            }

            await process.WaitForExitAsync(ct).ConfigureAwait(false);
            return new Ended(process.ExitCode, samples, await saying.WaitAsync(ct).ConfigureAwait(false));
        }
        finally
        {
            Kill(process);
            await process.WaitForExitAsync(CancellationToken.None).WaitAsync(Grace, CancellationToken.None).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private static Process Start(ProcessStartInfo start)
    {
        try
        {
            return Process.Start(start) ?? throw new DecoderAwayException("No process was started.");
        }
        catch (Win32Exception trouble)
        {
            throw new DecoderAwayException("What holds the decoder can’t be started.", trouble);
        }
    }

    // Null where it is more than that.
    private static async Task<byte[]?> TakeAsync(Stream from, int most)
    {
        var bytes = new byte[Piece];
        var there = 0;
        for (int read; (read = await from.ReadAsync(bytes.AsMemory(there), CancellationToken.None).ConfigureAwait(false)) > 0;)
        {
            there += read;
            if (there > most)
            {
                return null;
            }

            if (there == bytes.Length)
            {
                Array.Resize(ref bytes, (int)Math.Min(most + 1L, 2L * bytes.Length));
            }
        }

        Array.Resize(ref bytes, there);
        return bytes;
    }

    // All of it is taken, so that nobody waits, and only its beginning is kept.
    private static async Task<string> HeadAsync(Stream from)
    {
        var (kept, piece) = (new StringBuilder(), new byte[MostSaid]);
        for (int read; (read = await from.ReadAsync(piece, CancellationToken.None).ConfigureAwait(false)) > 0;)
        {
            kept.Append(Encoding.ASCII.GetString(piece, 0, Math.Min(read, MostSaid - kept.Length)));
        }

        return string.Concat(kept.ToString().Select(letter => char.IsControl(letter) ? ' ' : letter));
    }

    private static void Kill(Process process)
    {
        try
        {
            process.Kill(entireProcessTree: true);
        }
        catch (Exception gone) when (gone is InvalidOperationException or Win32Exception or AggregateException)
        {
            // It ended by itself at the same moment.
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The decoder that was named ended with {Code}: {Said}")]
    private static partial void Complained(ILogger logger, int code, string said);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Sounds are decoded by a child with limits alone: bwrap isn’t there, or doesn’t work here.")]
    private static partial void WithoutWalls(ILogger logger);

    private sealed record Ended(int Code, byte[]? Samples, string Said);
}
