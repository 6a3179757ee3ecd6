# Caddy as Debian packages it, with the folders of the official image. Built by make-images.sh.
ARG BASE
FROM ${BASE}
RUN apt-get -qq update \
 && DEBIAN_FRONTEND=noninteractive apt-get -qq install --yes --no-install-recommends caddy \
 && rm -rf /var/lib/apt/lists/* \
 && mkdir -p /config /data
ENV XDG_CONFIG_HOME=/config XDG_DATA_HOME=/data
CMD ["caddy", "run", "--config", "/etc/caddy/Caddyfile", "--adapter", "caddyfile"]
