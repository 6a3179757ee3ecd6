using System.Globalization;
using ReedClinic.Measurement.Sound.Decoding;

namespace ReedClinic.Web.Background;

/// <summary>
/// Which program decodes what isn’t decoded here, and which ones hold it: the command line of a child, as a list that no shell reads.
/// It names the sound’s own file and its form, which its content told; nothing that anybody typed.
/// </summary>
/// <param name="Decoder">FFmpeg, or what takes its place; null where none was named.</param>
/// <param name="Limiter">util-linux’ <c>prlimit</c>; null where it isn’t there: then no child is started.</param>
/// <param name="Walls"><c>bwrap</c>, in whose view of the machine there is nothing but programs and this one file; null to go without.</param>
public sealed record ChildPrograms(string? Decoder, string? Limiter, string? Walls)
{
    /// <summary>The setting that names the decoder by its whole path.</summary>
    public const string Setting = "Sound:Ffmpeg";

    /// <summary>The most memory that it may ask for, in bytes.</summary>
    public const long Memory = 1L << 30;

    /// <summary>The most seconds of a processor that it may take: a minute of sound needs one or two.</summary>
    public const int ProcessorSeconds = 20;

    private const int OpenFiles = 32;
    private const string InsideWalls = "/sound";

    private static readonly string[] Folders = ["/usr/bin", "/bin"];

    // Programs and what they load. (/etc/alternatives: Debian’s names of libraries of which there are several.)
    private static readonly string[] Seen = ["/usr", "/bin", "/lib", "/lib64", "/etc/ld.so.cache", "/etc/alternatives"];

    /// <summary>Whether a child can be started.</summary>
    public bool CanRun => Decoder is not null && Limiter is not null;

    /// <summary>Reads the setting, and looks for the rest where systems keep programs.</summary>
    /// <param name="settings">The host's settings.</param>
    public static ChildPrograms Of(IConfiguration settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return new(settings[Setting] is { Length: > 0 } said ? said : null, Find("prlimit"), Find("bwrap"));
    }

    /// <summary>What FFmpeg calls a form that is left to it; null for every other.</summary>
    /// <param name="form">The form.</param>
    public static string? NameOf(SoundForm? form) => form switch { SoundForm.Mp4 => "mov", SoundForm.Flac => "flac", _ => null };

    /// <summary>The command line that decodes one sound: 32-bit floats, one channel, <see cref="SoundClip.Rate"/>, on its output.</summary>
    /// <param name="sound">The sound’s file.</param>
    /// <param name="form">Its form.</param>
    /// <param name="seconds">How much is decoded at the most.</param>
    /// <param name="withWalls">Whether it sees nothing of the machine but this file.</param>
    public IReadOnlyList<string> Decoding(string sound, SoundForm form, int seconds, bool withWalls) =>
    [
        .. Held(withWalls ? ["--ro-bind", sound, InsideWalls] : [], withWalls),
        "-nostdin", "-hide_banner", "-loglevel", "error",
        "-protocol_whitelist", "file,pipe", "-codec_whitelist", "aac,alac,flac,opus", "-threads", "1",
        "-f", NameOf(form) ?? throw new ArgumentOutOfRangeException(nameof(form)),
        "-t", seconds.ToString(CultureInfo.InvariantCulture),
        "-i", "file:" + (withWalls ? InsideWalls : sound),
        "-vn", "-sn", "-dn", "-map_metadata", "-1", "-threads", "1",
        "-ac", "1", "-ar", SoundClip.Rate.ToString(CultureInfo.InvariantCulture), "-f", "f32le", "pipe:1",
    ];

    /// <summary>The command line that asks the decoder for its version, to see whether it runs behind walls.</summary>
    public IReadOnlyList<string> Asking() => [.. Held([], withWalls: true), "-version"];

    // No file that it writes has room for a byte.
    private IEnumerable<string> Held(IReadOnlyList<string> more, bool withWalls) =>
    [
        Limiter ?? throw new InvalidOperationException("There is no prlimit."),
        string.Create(CultureInfo.InvariantCulture, $"--as={Memory}"),
        string.Create(CultureInfo.InvariantCulture, $"--cpu={ProcessorSeconds}"),
        string.Create(CultureInfo.InvariantCulture, $"--nofile={OpenFiles}"),
        "--fsize=0", "--core=0", "--",
        .. withWalls ? Walled(more) : [],
        Decoder ?? throw new InvalidOperationException("No decoder was named."),
    ];

    private IEnumerable<string> Walled(IReadOnlyList<string> more) =>
    [
        Walls ?? throw new InvalidOperationException("There is no bwrap."),
        "--unshare-all", "--new-session", "--cap-drop", "ALL",
        .. Seen.SelectMany(place => (string[])["--ro-bind-try", place, place]),
        .. Decoder!.StartsWith("/usr/", StringComparison.Ordinal) ? (string[])[] : ["--ro-bind", Decoder, Decoder],
        .. more,
        "--chdir", "/", "--",
    ];

    private static string? Find(string program) => Folders.Select(folder => Path.Combine(folder, program)).FirstOrDefault(File.Exists);
}
