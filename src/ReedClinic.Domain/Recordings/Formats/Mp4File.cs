using System.Buffers.Binary;

namespace ReedClinic.Domain.Recordings.Formats;

/// <summary>
/// One track of sound in an ISO base media file. What isn't needed to play it becomes free room of the same size, so that places
/// which point into the file stay true; dates become none. ISO/IEC 14496-12, clauses 4, 6 and 8.
/// </summary>
internal sealed class Mp4File
{
    private const int MostBoxes = 200_000;
    private const int MostBrands = 256;

    private static readonly string[] SoundBrands = ["M4A ", "M4B ", "mp41", "mp42", "isom", "iso2", "iso3", "iso4", "iso5", "iso6", "dash", "3gp4", "3gp5", "3gp6"];
    private static readonly string[] PictureBrands = ["heic", "heix", "heim", "heis", "hevc", "mif1", "msf1", "avif"];
    private static readonly string[] Entries = ["mp4a", "alac", "Opus", "fLaC"];

    private readonly byte[] _bytes;
    private readonly List<(int Start, int End)> _sound = [];
    private readonly List<long> _places = [];
    private int _boxes;
    private int _tracks;
    private bool _isFilm;
    private int? _milliseconds;

    private Mp4File(ReadOnlySpan<byte> file) => _bytes = file.ToArray();

    public static bool Begins(ReadOnlySpan<byte> file) => HasBrand(file, SoundBrands) && !HasBrand(file, PictureBrands);

    public static bool IsHeic(ReadOnlySpan<byte> file) => HasBrand(file, PictureBrands);

    public static MediaReading Read(ReadOnlySpan<byte> file)
    {
        var mp4 = new Mp4File(file);
        var isWhole = mp4.Each(0, mp4._bytes.Length, "");
        return mp4._isFilm ? new MediaReading.Refused(RecordingRefusal.Film)
            : isWhole && mp4._tracks == 1 && mp4._sound.Count > 0 && mp4._places.All(mp4.IsInSound)
                ? new MediaReading.Clean(MediaType.Mp4, mp4._bytes) { Milliseconds = mp4._milliseconds }
                : MediaReading.Broken;
    }

    private static bool HasBrand(ReadOnlySpan<byte> file, string[] brands)
    {
        if (file.Length < 16 || !file[4..8].SequenceEqual("ftyp"u8) || BinaryPrimitives.ReadUInt32BigEndian(file) is not (>= 16 and <= MostBrands and var size) || size > file.Length)
        {
            return false;
        }

        for (var at = 8; at + 4 <= size; at += 4)
        {
            // Between the first brand and the others stands a version.
            if (at != 12 && brands.Contains(System.Text.Encoding.ASCII.GetString(file.Slice(at, 4))))
            {
                return true;
            }
        }

        return false;
    }

    private bool IsInSound(long place) => _sound.Any(part => place >= part.Start && place < part.End);

    // Every box between two places, none larger than what is around it.
    private bool Each(int at, int end, string parent)
    {
        while (at < end)
        {
            if (end - at < 8 || ++_boxes > MostBoxes)
            {
                return false;
            }

            var head = 8;
            long size = BinaryPrimitives.ReadUInt32BigEndian(_bytes.AsSpan(at));
            if (size == 1 && end - at >= 16)
            {
                head = 16;
                size = BinaryPrimitives.ReadInt64BigEndian(_bytes.AsSpan(at + 8));
            }

            if (size < head || size > end - at || !Take(new Box(NameAt(at + 4), at, at + head, at + (int)size), parent))
            {
                return false;
            }

            at += (int)size;
        }

        return true;
    }

    private bool Take(Box box, string parent) => (parent, box.Name) switch
    {
        ("", "moov" or "moof") or ("moov", "trak" or "mvex") or ("trak", "mdia" or "edts") or ("mdia", "minf") or ("minf", "stbl") or ("moof", "traf") =>
            Each(box.Body, box.End, box.Name),
        ("", "ftyp") => box.Start == 0 || Blank(box),
        ("", "mdat") => TakeSound(box),
        ("moov", "mvhd") or ("trak", "tkhd") => Undate(box),
        ("mdia", "mdhd") => Undate(box) && ReadLength(box),
        ("mdia", "hdlr") => TakeHandler(box),
        ("minf", "dinf") => IsSelfContained(box),
        ("stbl", "stsd") => AreKnownEntries(box),
        ("stbl", "stco") => ReadPlaces(box, 4),
        ("stbl", "co64") => ReadPlaces(box, 8),
        ("", "styp" or "sidx" or "mfra") or ("mvex", "mehd" or "trex") or ("edts", "elst") or ("minf", "smhd")
            or ("stbl", "stts" or "stsc" or "stsz" or "stz2" or "ctts" or "stss" or "sgpd" or "sbgp")
            or ("moof", "mfhd") or ("traf", "tfhd" or "tfdt" or "trun" or "sgpd" or "sbgp") => true,
        _ => Blank(box),
    };

    private bool TakeSound(Box box)
    {
        _sound.Add((box.Body, box.End));
        return true;
    }

    // Both dates stand behind version and flags, long ones in version 1.
    private bool Undate(Box box)
    {
        var dates = box.Body < box.End && _bytes[box.Body] == 1 ? 16 : 8;
        if (box.Length < 4 + dates + 8)
        {
            return false;
        }

        _bytes.AsSpan(box.Body + 4, dates).Clear();
        return true;
    }

    private bool ReadLength(Box box)
    {
        var isLong = _bytes[box.Body] == 1;
        var at = box.Body + 4 + (isLong ? 16 : 8);
        if (box.End - at < (isLong ? 12 : 8))
        {
            return false;
        }

        var rate = BinaryPrimitives.ReadUInt32BigEndian(_bytes.AsSpan(at));
        var length = isLong ? BinaryPrimitives.ReadUInt64BigEndian(_bytes.AsSpan(at + 4)) : BinaryPrimitives.ReadUInt32BigEndian(_bytes.AsSpan(at + 4));

        // A file in fragments says nothing here; only playing it tells.
        _milliseconds = length > 0 && rate > 0 ? (int)Math.Clamp(length * 1000.0 / rate, 1, int.MaxValue) : null;
        return rate > 0;
    }

    // Whose track it is; the name behind it is what a program or a person called it.
    private bool TakeHandler(Box box)
    {
        if (box.Length < 24)
        {
            return false;
        }

        _tracks++;
        var handler = NameAt(box.Body + 8);
        _isFilm |= handler is "vide" or "auxv" or "pict";
        _bytes.AsSpan(box.Body + 24, box.End - box.Body - 24).Clear();
        return handler == "soun";
    }

    // A reference may name another file, or a place on the web: only “in this file” is taken. 8.7.2.
    private bool IsSelfContained(Box dinf)
    {
        var reference = _bytes.AsSpan(dinf.Body, dinf.Length);
        return reference.Length == 28 && reference[4..8].SequenceEqual("dref"u8)
            && reference[20..24].SequenceEqual("url "u8) && BinaryPrimitives.ReadUInt32BigEndian(reference[24..]) == 1;
    }

    private bool AreKnownEntries(Box box) =>
        box.Length >= 16 && BinaryPrimitives.ReadUInt32BigEndian(_bytes.AsSpan(box.Body + 4)) == 1 && Entries.Contains(NameAt(box.Body + 12));

    private bool ReadPlaces(Box box, int width)
    {
        if (box.Length < 8 || BinaryPrimitives.ReadUInt32BigEndian(_bytes.AsSpan(box.Body + 4)) is var count && box.Length - 8 != (long)count * width)
        {
            return false;
        }

        for (var at = box.Body + 8; at < box.End; at += width)
        {
            _places.Add(width == 4 ? BinaryPrimitives.ReadUInt32BigEndian(_bytes.AsSpan(at)) : BinaryPrimitives.ReadInt64BigEndian(_bytes.AsSpan(at)));
        }

        return true;
    }

    private bool Blank(Box box)
    {
        "free"u8.CopyTo(_bytes.AsSpan(box.Start + 4));
        _bytes.AsSpan(box.Body, box.Length).Clear();
        return true;
    }

    private string NameAt(int at) => System.Text.Encoding.Latin1.GetString(_bytes.AsSpan(at, 4));

    private readonly record struct Box(string Name, int Start, int Body, int End)
    {
        public int Length => End - Body;
    }
}
