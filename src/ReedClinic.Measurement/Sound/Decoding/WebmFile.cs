using System.Buffers.Binary;

namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>
/// Reads Opus from WebM (RFC 8794 and RFC 9559). Containers are entered and never measured, since browsers leave their lengths open;
/// whatever else there is, words and attachments too, is stepped over. Blocks hold one packet each, as browsers write them.
/// </summary>
internal ref struct WebmFile(byte[] bytes, DecodeLimits limits)
{
    private const long Unknown = -1;
    private readonly byte[] _bytes = bytes;
    private int _at;
    private bool _isWebm;
    private bool _isOpus;
    private ulong _track;
    private bool _hasTrack;
    private bool _isCutShort;
    private ReadOnlySpan<byte> _head;
    private OpusSound? _sound;

    public static DecodeResult Read(byte[] bytes, DecodeLimits limits)
    {
        var file = new WebmFile(bytes, limits);
        try
        {
            var refusal = file.Walk();
            return refusal is { } reason ? new DecodeResult.Refused(reason, SoundForm.WebmOpus)
                : file._sound is { } sound ? sound.Mono.Finish(SoundForm.WebmOpus, file._isCutShort, sound.Skip)
                : new DecodeResult.Refused(file._hasTrack && !file._isOpus ? DecodeRefusal.FormNotRead : DecodeRefusal.NoSound, SoundForm.WebmOpus);
        }
        finally
        {
            file._sound?.Dispose();
        }
    }

    private DecodeRefusal? Walk()
    {
        while (_at < _bytes.Length)
        {
            if (Number(keepsMarker: true) is not { } id || Number(keepsMarker: false) is not { } size)
            {
                _isCutShort = true;
                return null;
            }

            if (IsEntered(id))
            {
                continue;
            }

            if (size == Unknown)
            {
                return DecodeRefusal.Damaged;
            }

            if (size > _bytes.Length - _at)
            {
                _isCutShort = true;
                return null;
            }

            var content = _bytes.AsSpan(_at, (int)size);
            _at += (int)size;
            if (Take(id, content) is { } refusal)
            {
                return refusal;
            }
        }

        return null;
    }

    /// <summary>EBML, Segment, Tracks, TrackEntry, Cluster, BlockGroup: what is in them follows.</summary>
    private bool IsEntered(long id)
    {
        if (id == 0xAE)
        {
            (_hasTrack, _isOpus) = (true, false);
            _head = default;
        }

        return id is 0x1A45DFA3 or 0x18538067 or 0x1654AE6B or 0xAE or 0x1F43B675 or 0xA0;
    }

    private DecodeRefusal? Take(long id, ReadOnlySpan<byte> content)
    {
        switch (id)
        {
            case 0x4282:
                _isWebm = content.TrimEnd((byte)0).SequenceEqual("webm"u8);
                return _isWebm ? null : DecodeRefusal.NotSound;
            case 0xD7 when _sound is null:
                _track = content.Length is > 0 and <= 8 ? BigEndian(content) : 0;
                return null;
            case 0x86 when _sound is null:
                _isOpus = content.TrimEnd((byte)0).SequenceEqual("A_OPUS"u8);
                return _isOpus ? null : DecodeRefusal.FormNotRead;
            case 0x63A2 when _sound is null:
                _head = content;
                return null;
            case 0xA3 or 0xA1:
                return Block(content);
            default:
                return null;
        }
    }

    private DecodeRefusal? Block(ReadOnlySpan<byte> content)
    {
        if (!_isWebm || !_isOpus || content.Length < 4 || (content[0] & 0x80) == 0)
        {
            return DecodeRefusal.Damaged;
        }

        if (_sound is null)
        {
            var (sound, refusal) = OpusSound.Begin(_head, limits, _bytes.Length);
            if (sound is null)
            {
                return refusal;
            }

            _sound = sound;
        }

        if ((uint)(content[0] & 0x7F) != _track)
        {
            return null;
        }

        var isLaced = (content[3] & 0x06) != 0;
        return isLaced ? DecodeRefusal.FormNotRead : _sound.Take(content[4..]) ? null : _sound.Mono.Refusal;
    }

    /// <summary>A number of one to eight bytes; its first bit that is set tells how many.</summary>
    private long? Number(bool keepsMarker)
    {
        if (_at >= _bytes.Length || _bytes[_at] == 0)
        {
            return null;
        }

        var length = System.Numerics.BitOperations.LeadingZeroCount((uint)_bytes[_at]) - 23;
        if (_at + length > _bytes.Length || (keepsMarker && length > 4))
        {
            return null;
        }

        var raw = (long)BigEndian(_bytes.AsSpan(_at, length));
        _at += length;
        var mask = (1L << (7 * length)) - 1;
        return keepsMarker ? raw : (raw & mask) == mask ? Unknown : raw & mask;
    }

    private static ulong BigEndian(ReadOnlySpan<byte> content)
    {
        Span<byte> eight = stackalloc byte[8];
        eight.Clear();
        content.CopyTo(eight[(8 - content.Length)..]);
        return BinaryPrimitives.ReadUInt64BigEndian(eight);
    }
}
