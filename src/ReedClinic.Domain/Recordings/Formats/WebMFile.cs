using System.Buffers.Binary;

namespace ReedClinic.Domain.Recordings.Formats;

/// <summary>
/// One track of Opus or Vorbis in WebM, also as a browser records it, with sizes that nobody knows yet. What isn't needed to play
/// it is overwritten with nothing of the same size, so that places which point into the file stay true. RFC 8794; RFC 9559.
/// </summary>
internal sealed class WebMFile
{
    private readonly byte[] _bytes;
    private long _scale = 1_000_000;
    private long _last = -1;
    private int _tracks;
    private bool _isFilm;
    private bool _isEndless;
    private int _brokeOff;

    private WebMFile(ReadOnlySpan<byte> file) => _bytes = file.ToArray();

    public static ReadOnlySpan<byte> Beginning => [0x1A, 0x45, 0xDF, 0xA3];

    public static MediaReading Read(ReadOnlySpan<byte> file)
    {
        var webm = new WebMFile(file);
        var end = webm.ReadFile();
        return end > 0 && webm is { _tracks: 1, _last: >= 0, _isFilm: false }
            ? new MediaReading.Clean(MediaType.WebM, webm._bytes.AsMemory(0, end)) { Milliseconds = webm.Played }
            : webm._isFilm ? new MediaReading.Refused(RecordingRefusal.Film) : MediaReading.Broken;
    }

    // A sound of a single block begins and ends at zero; it plays for a moment all the same.
    private int Played => (int)Math.Clamp(_last * (double)_scale / 1_000_000, 1, int.MaxValue);

    // The end of what is kept; 0 when it can't be.
    private int ReadFile()
    {
        if (At(0, _bytes.Length) is not { HasSize: true } head || head.End > 256 || !IsWebM(head)
            || At(head.End, _bytes.Length) is not { Id: EbmlId.Segment } segment)
        {
            return 0;
        }

        _isEndless = !segment.HasSize;
        for (var at = segment.Body; at < segment.End;)
        {
            if (At(at, segment.End) is not { } part || TakePart(part) is not (> 0 and var next))
            {
                return 0;
            }

            at = next;
        }

        return _brokeOff > 0 ? _brokeOff : segment.End;
    }

    private bool IsWebM(EbmlElement head)
    {
        var isWebM = false;
        return Each(head, part =>
        {
            isWebM |= part.Id == EbmlId.DocType && _bytes.AsSpan(part.Body, part.End - part.Body).TrimEnd((byte)0).SequenceEqual("webm"u8);
            return true;
        }) && isWebM;
    }

    // Where the next part begins; 0 when this one can't be taken.
    private int TakePart(EbmlElement part)
    {
        if (part.Id == EbmlId.Cluster)
        {
            return TakeCluster(part);
        }

        var isTaken = part.HasSize && part.Id switch
        {
            EbmlId.SeekHead or EbmlId.Cues => true,
            EbmlId.Info => Each(part, TakeInfo),
            EbmlId.Tracks => Each(part, TakeTrack),
            EbmlId.Void or EbmlId.Checksum or EbmlId.Tags or EbmlId.Attachments or EbmlId.Chapters => Blank(part),
            _ => false,
        };
        return isTaken ? part.End : 0;
    }

    private bool TakeInfo(EbmlElement part)
    {
        switch (part.Id)
        {
            case EbmlId.TimestampScale:
                _scale = (long)Number(part);
                return _scale is > 0 and <= 1_000_000_000;
            case EbmlId.Duration:
                return true;
            case EbmlId.MuxingApp or EbmlId.WritingApp:
                // Both must be there; a text of zeros is an empty one.
                _bytes.AsSpan(part.Body, part.End - part.Body).Clear();
                return true;
            default:
                return Blank(part);
        }
    }

    private bool TakeTrack(EbmlElement track)
    {
        if (track.Id != EbmlId.TrackEntry)
        {
            return Blank(track);
        }

        _tracks++;
        var (isSound, isKnown) = (false, false);
        return Each(track, part =>
        {
            switch (part.Id)
            {
                case EbmlId.TrackType:
                    isSound = Number(part) == 2;
                    _isFilm |= !isSound;
                    return true;
                case EbmlId.CodecId:
                    isKnown = Text(part) is "A_OPUS" or "A_VORBIS";
                    return true;
                case EbmlId.CodecPrivate:
                    return TakePrivate(_bytes.AsSpan(part.Body, part.End - part.Body));
                case EbmlId.ContentEncodings:
                    return false;
                default:
                    return EbmlId.IsKeptOfTrack(part.Id) || Blank(part);
            }
        }) && isSound && isKnown;
    }

    // What an Opus track brings is its head alone. Vorbis brings three packets, and of the comments only the maker's name stays,
    // made of blanks: it can't be shorter.
    private static bool TakePrivate(Span<byte> content)
    {
        if (content.StartsWith("OpusHead"u8))
        {
            return content.Length is >= 19 and < 300;
        }

        if (content.IsEmpty || content[0] != 2 || XiphLengths(content) is not var (at, comment) || comment < 16 || at + comment > content.Length
            || !content.Slice(at, 7).SequenceEqual("\x03vorbis"u8))
        {
            return false;
        }

        var packet = content.Slice(at, comment);
        packet[7..].Fill((byte)' ');
        BinaryPrimitives.WriteInt32LittleEndian(packet[7..], comment - 16);
        packet[^5..^1].Clear();
        packet[^1] = 1;
        return true;
    }

    // Where the second packet begins, and how long it is.
    private static (int At, int Length)? XiphLengths(ReadOnlySpan<byte> content)
    {
        var lengths = new int[2];
        var at = 1;
        for (var packet = 0; packet < 2; packet++)
        {
            byte next;
            do
            {
                if (at >= content.Length)
                {
                    return null;
                }

                next = content[at++];
                lengths[packet] += next;
            }
            while (next == 255);
        }

        return (at + lengths[0], lengths[1]);
    }

    private int TakeCluster(EbmlElement cluster)
    {
        long time = -1;
        var at = cluster.Body;
        while (at < cluster.End)
        {
            if (At(at, cluster.End) is not { HasSize: true } part)
            {
                return At(at, cluster.End) is { Id: EbmlId.Cluster } && !cluster.HasSize ? at : BreakOff(cluster, at);
            }

            // A cluster of unknown size ends where something begins that can't be within it.
            if (!cluster.HasSize && EbmlId.IsPartOfSegment(part.Id))
            {
                return at;
            }

            time = part.Id == EbmlId.Timestamp ? (long)Number(part) : time;
            if (!TakeOfCluster(part, time))
            {
                return 0;
            }

            at = part.End;
        }

        return at;
    }

    // A recording that was broken off while it was made ends within what came next: it is kept up to there.
    private int BreakOff(EbmlElement cluster, int at)
    {
        if (!_isEndless || cluster.HasSize || _last < 0 || _bytes[at] is not ((byte)EbmlId.SimpleBlock or (byte)EbmlId.BlockGroup or (byte)(EbmlId.Cluster >> 24)))
        {
            return 0;
        }

        _brokeOff = at;
        return cluster.End;
    }

    private bool TakeOfCluster(EbmlElement part, long time) => part.Id switch
    {
        EbmlId.Timestamp => time is >= 0 and < 1L << 40,
        EbmlId.Position or EbmlId.PreviousSize => true,
        EbmlId.SimpleBlock => TakeBlock(part, time),
        EbmlId.BlockGroup => Each(part, inner => inner.Id switch
        {
            EbmlId.Block => TakeBlock(inner, time),
            EbmlId.BlockDuration or EbmlId.DiscardPadding or EbmlId.ReferenceBlock => true,
            _ => Blank(inner),
        }),
        _ => Blank(part),
    };

    // The track's number, then how long after its cluster's time it plays.
    private bool TakeBlock(EbmlElement block, long time)
    {
        var track = Math.Max(1, EbmlElement.LengthOf(_bytes[block.Body]));
        if (time < 0 || block.End - block.Body < track + 3)
        {
            return false;
        }

        _last = Math.Max(_last, time + BinaryPrimitives.ReadInt16BigEndian(_bytes.AsSpan(block.Body + track)));
        return true;
    }

    private EbmlElement? At(int at, int end) => EbmlElement.Read(_bytes, at, end);

    private bool Each(EbmlElement parent, Func<EbmlElement, bool> take)
    {
        for (var at = parent.Body; at < parent.End;)
        {
            if (At(at, parent.End) is not { HasSize: true } part || !take(part))
            {
                return false;
            }

            at = part.End;
        }

        return true;
    }

    private bool Blank(EbmlElement part)
    {
        part.Blank(_bytes);
        return true;
    }

    private string Text(EbmlElement part) => System.Text.Encoding.ASCII.GetString(_bytes.AsSpan(part.Body, part.End - part.Body).TrimEnd((byte)0));

    private ulong Number(EbmlElement part)
    {
        var number = 0UL;
        foreach (var next in _bytes.AsSpan(part.Body, Math.Min(8, part.End - part.Body)))
        {
            number = (number << 8) | next;
        }

        return number;
    }
}
