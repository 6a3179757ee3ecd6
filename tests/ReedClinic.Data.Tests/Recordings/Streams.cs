namespace ReedClinic.Data.Tests.Recordings;

/// <summary>Gives zeros without end, and counts them.</summary>
internal sealed class EndlessStream : Stream
{
    public long Given { get; private set; }

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    public override void Flush()
    {
    }

    public override int Read(byte[] buffer, int offset, int count)
    {
        Given += count;
        return count;
    }

    public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
    {
        Given += buffer.Length;
        return new ValueTask<int>(buffer.Length);
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}

/// <summary>Gives so much, and then the connection is gone, or the disk full.</summary>
internal sealed class BreakingStream(byte[] bytes, int after, int code = 104) : MemoryStream(bytes)
{
    public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) =>
        Position >= after ? throw new IOException("Gone.", code) : await base.ReadAsync(buffer[..Math.Min(buffer.Length, after)], cancellationToken);
}
